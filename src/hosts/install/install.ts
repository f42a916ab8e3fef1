/** Entry of the install page: checks what this server serves, then offers the manifest and the package for its address. */
import { entryOf, missing } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import { releaseFiles, zip } from "./archive.ts";
import { servedFiles } from "./served-files.ts";
import { madeForElsewhere, stampedFiles } from "./stamped.ts";

const address = location.href.replace(/[?#].*$/, "").replace(/\/[^/]*$/, "");
const state = document.querySelector("#state") ?? missing();
const offers = document.querySelector("#offers") ?? missing();

void check().catch((problem: Error) => say(problem.message));

function say(words: string, ...sentences: string[]): void {
  state.replaceChildren(
    element("p", {}, words),
    ...(sentences.length > 0 ? [element("ul", {}, ...sentences.map((one) => element("li", {}, one)))] : []),
  );
}

async function check(): Promise<void> {
  if (!address.startsWith("https://"))
    return say(`Excel loads an add-in only over https; this page came from ${address}. Serve the folder over https.`);
  const { list, contents, problems } = await servedFiles((path) => say(`Looking at ${path}`));
  const stamped = stampedFiles(contents, list.project, address);
  if (problems.length > 0)
    return say("Not ready: these files must be fixed on the server, then load this page again.", ...problems);
  const elsewhere = madeForElsewhere(contents, stamped);
  const ready = `Ready: all ${contents.size} files are served from ${address} with the right type.`;
  if (elsewhere.length === 0) say(ready);
  else
    say(
      `${ready} The files below were made for another address. The add-in works with the manifest offered here; so that help links lead here too, put the files of the package's web folder in place of yours.`,
      ...elsewhere,
    );
  offers.replaceChildren(
    download("bracket-bill.xml", entryOf(stamped, "manifest/bracket-bill.xml"), "Download the manifest"),
    download(`bracket-bill-${list.project.version}.zip`, zip(releaseFiles(stamped)), "Download the package"),
  );
}

/** Made here, of what was checked; nothing is sent anywhere. */
const download = (name: string, content: Uint8Array, words: string): HTMLElement =>
  element(
    "p",
    {},
    element("a", { class: "button", download: name, href: URL.createObjectURL(new Blob([content.slice()])) }, words),
    ` ${name}, for ${address}`,
  );
