/** A file's name from whatever a part is called: letters, digits, dash and underscore; never a path, never twice. */
const LONGEST = 60;
/** Names that some systems keep for devices. */
const KEPT = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;

export function fileNames(parts: readonly string[]): string[] {
  const taken = new Set<string>();
  return parts.map((part) => {
    const plain = part
      .normalize("NFKD")
      .replace(/[^A-Za-z0-9_-]+/g, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, LONGEST);
    const stem = plain === "" ? "part" : KEPT.test(plain) ? `${plain}-part` : plain;
    let name = stem;
    for (let number = 2; taken.has(name.toLowerCase()); number++) name = `${stem}-${number}`;
    taken.add(name.toLowerCase());
    return name;
  });
}
