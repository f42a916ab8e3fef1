/**
 * How a function is spelled in a file and what it is called: `_xlfn.`, `_xlws.` and `_xlfn._xlws.` mark functions newer
 * than the format, `_xldudf_SHOP_` a custom function whose dots became underscores; typed text has "SHOP.".
 */
export interface FunctionName {
  readonly name: string;
  readonly custom: boolean;
}

export function functionName(spelled: string): FunctionName {
  const upper = spelled
    .toUpperCase()
    .replace(/^_XLFN\./, "")
    .replace(/^_XLWS\./, "");
  if (upper.startsWith("_XLDUDF_SHOP_")) return { name: upper.slice("_XLDUDF_SHOP_".length), custom: true };
  if (upper.startsWith("SHOP.")) return { name: upper.slice("SHOP.".length), custom: true };
  return { name: upper, custom: false };
}
