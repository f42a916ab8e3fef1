/**
 * The unified manifest for Microsoft 365, from the same model. It only names functions.json: where it listed functions
 * itself, that file would not be read, and with it the switch that lets error cells in would be lost.
 */
import { type ManifestModel, REQUIREMENTS } from "./model.ts";

/** 1.23 was the first with custom functions, later ones also know metadataUrl. */
const SCHEMA_VERSION = "1.30";

export const jsonManifest = (model: ManifestModel) => ({
  $schema: `https://developer.microsoft.com/json-schemas/teams/v${SCHEMA_VERSION}/MicrosoftTeams.schema.json`,
  manifestVersion: SCHEMA_VERSION,
  id: model.appId,
  version: model.version,
  developer: {
    name: model.provider,
    websiteUrl: model.urls.site,
    privacyUrl: model.urls.privacy,
    termsOfUseUrl: model.urls.terms,
  },
  name: { short: model.appName, full: `${model.appName}: functions for a bill of brackets` },
  description: { short: model.shortDescription, full: model.description },
  icons: { outline: "outline.png", color: "color.png" },
  accentColor: model.accentColor,
  validDomains: [model.host],
  authorization: {
    permissions: { resourceSpecific: [{ name: "Document.ReadWrite.User", type: "Delegated" }] },
  },
  extensions: [
    {
      requirements: { scopes: ["workbook"], capabilities: REQUIREMENTS },
      runtimes: [runtime(model)],
      ribbons: [ribbon(model)],
      getStartedMessages: [{ ...model.welcome, learnMoreUrl: model.urls.site }],
      // Where the XML add-in is installed too, only one of them shows and answers.
      alternates: [{ hide: { customOfficeAddin: { officeAddinId: model.addinId } } }],
    },
  ],
});

const runtime = (model: ManifestModel) => ({
  id: "SharedRuntime",
  type: "general",
  code: { page: model.urls.page, script: model.urls.script },
  lifetime: "long",
  // Without a view: a shared runtime has one page, and naming a view would ask for a second one.
  actions: [{ id: "ShowPane", type: "openPage" }],
  customFunctions: {
    namespace: { id: model.namespace, name: model.namespace },
    metadataUrl: model.urls.metadata,
  },
});

const ribbon = ({ ribbon: texts, appRibbonIcons: icons }: ManifestModel) => ({
  contexts: ["default"],
  tabs: [
    {
      builtInTabId: "TabHome",
      groups: [
        {
          id: "BracketBill.Group",
          label: texts.appGroup,
          icons,
          controls: [
            {
              id: "BracketBill.Guide",
              type: "button",
              label: texts.button,
              icons,
              supertip: { title: texts.button, description: texts.tip },
              actionId: "ShowPane",
            },
          ],
        },
      ],
    },
  ],
});
