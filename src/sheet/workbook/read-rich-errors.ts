import type { ErrorCode } from "../../units/cell.ts";
import { parseXml } from "../package/xml.ts";

/** errorType of a rich error value: 8 seen in a file Excel saved, 13 memory, unverified. */
const NEWER_ERRORS: Readonly<Record<string, ErrorCode>> = { "8": "#SPILL!", "13": "#CALC!" };

/**
 * Errors newer than the file format stand as #VALUE! in the cell; its vm attribute leads over the value metadata and a
 * rich value to what it really is (MS-XLSX, rich data). Answers the code by vm.
 */
export function readRichErrors(
  metadata: string | undefined,
  values: string | undefined,
  structures: string | undefined,
): Map<number, ErrorCode> {
  const errors = new Map<number, ErrorCode>();
  if (metadata === undefined || values === undefined || structures === undefined) return errors;
  const codeOf = errorOfRichValue(values, structures);
  richValueByMetadata(metadata).forEach((richValue, i) => {
    const code = richValue === undefined ? undefined : codeOf(richValue);
    if (code) errors.set(i + 1, code);
  });
  return errors;
}

function errorOfRichValue(values: string, structures: string): (index: number) => ErrorCode | undefined {
  const keyPosition: (number | undefined)[] = [];
  let isError = false;
  let key = 0;
  parseXml(structures, {
    open: ({ local, attributes }) => {
      if (local === "s") {
        isError = attributes["t"] === "_error";
        key = 0;
        keyPosition.push(undefined);
      } else if (local === "k") {
        if (isError && attributes["n"] === "errorType") keyPosition[keyPosition.length - 1] = key;
        key++;
      }
    },
  });
  const codes: (ErrorCode | undefined)[] = [];
  let wanted: number | undefined;
  let at = -1;
  let text = "";
  parseXml(values, {
    open: ({ local, attributes }) => {
      if (local === "rv") {
        wanted = keyPosition[Number(attributes["s"])];
        at = -1;
        codes.push(undefined);
      } else if (local === "v") {
        at++;
        text = "";
      }
    },
    text: (piece) => {
      text += piece;
    },
    close: (local) => {
      if (local === "v" && at === wanted) codes[codes.length - 1] = NEWER_ERRORS[text];
    },
  });
  return (index) => codes[index];
}

/** Rich value of every value-metadata record, in order. */
function richValueByMetadata(metadata: string): (number | undefined)[] {
  const types: string[] = [];
  const blocks: (number | undefined)[] = [];
  const found: (number | undefined)[] = [];
  let future = "";
  let inValues = false;
  parseXml(metadata, {
    open: ({ local, attributes }) => {
      if (local === "metadataType") types.push(attributes["name"] ?? "");
      else if (local === "futureMetadata") future = attributes["name"] ?? "";
      else if (local === "valueMetadata") inValues = true;
      else if (local === "bk" && future === "XLRICHVALUE") blocks.push(undefined);
      else if (local === "rvb" && future === "XLRICHVALUE") blocks[blocks.length - 1] = Number(attributes["i"]);
      else if (local === "rc" && inValues) {
        found.push(types[Number(attributes["t"]) - 1] === "XLRICHVALUE" ? blocks[Number(attributes["v"])] : undefined);
      }
    },
    close: (local) => {
      if (local === "futureMetadata") future = "";
      if (local === "valueMetadata") inValues = false;
    },
  });
  return found;
}
