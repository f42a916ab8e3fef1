/** `node shop COMMAND ...`: the same words in PowerShell, cmd and sh, which treat the "--" of npm differently. */
const [node, file, name, ...rest] = process.argv;
process.argv =
  name === "view" ? [node, file, name, ...rest] : [node, file, "shop", ...(name === undefined ? [] : [name]), ...rest];
import("./src/tools/start/start.mjs");
