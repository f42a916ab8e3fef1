/**
 * How a function is spelled in a file and what it is called: `_xlfn.`, `_xlws.` and `_xlfn._xlws.` mark functions newer
 * than the format, `_xldudf_NAMESPACE_` a custom function whose dots became underscores; typed text has "NAMESPACE.".
 */
interface FunctionName {
  readonly name: string;
  readonly custom: boolean;
}

/** `namespace` of the custom functions, in capitals; "" where there are none. */
export function functionName(spelled: string, namespace: string): FunctionName {
  const upper = spelled
    .toUpperCase()
    .replace(/^_XLFN\./, "")
    .replace(/^_XLWS\./, "");
  if (namespace === "") return { name: upper, custom: false };
  for (const prefix of [`_XLDUDF_${namespace}_`, `${namespace}.`])
    if (upper.startsWith(prefix)) return { name: upper.slice(prefix.length), custom: true };
  return { name: upper, custom: false };
}
