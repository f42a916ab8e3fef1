/** `node shop COMMAND ...`: the same words in PowerShell, cmd and sh, which treat the "--" of npm differently. */
const [node, file, name, ...rest] = process.argv;
process.argv =
  name === "view" && !rest.some((each) => each === "--help" || each === "-h")
    ? [node, file, name, ...rest]
    : [node, file, "shop", ...(name === undefined ? [] : [name]), ...rest];
import("./src/tools/start/start.mjs");
