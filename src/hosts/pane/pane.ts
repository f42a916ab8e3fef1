/** Entry of the page beside the workbook. It shares the catalogue with the functions bundle that is loaded before it. */
import { RECORDS } from "../../cells/catalogue.ts";
import { PRODUCT_VERSION } from "../../cells/record/version.generated.ts";
import { missing } from "../../units/certain.ts";
import { element } from "./dom/element.ts";
import { WorkbookPane } from "./excel/workbook-pane.ts";
import { guideEntry } from "./guide/entry.ts";
import { guide, openNamed } from "./guide/guide.ts";

const entries = RECORDS.map(guideEntry);
const main = document.querySelector("main") ?? missing();
(document.querySelector("footer") ?? missing()).append(element("p", {}, `Version ${PRODUCT_VERSION}`));
main.append(guide(entries));
openNamed(location.hash);
addEventListener("hashchange", () => openNamed(location.hash));

// Excel waits for this sign of life; opened in a plain browser the page is a guide and nothing more.
if (typeof Office !== "undefined")
  void Office.onReady().then(() => {
    if (typeof Excel === "undefined") return;
    const workbook = new WorkbookPane();
    main.replaceChildren(workbook.element, guide(entries, workbook.insert));
    openNamed(location.hash);
    return workbook.start();
  });
