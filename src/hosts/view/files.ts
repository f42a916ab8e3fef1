/** The workbook's file, as the server that shows the page keeps it: read, saved under a name of its own, watched. */

export interface Saved {
  readonly words: string;
  /** A name that is free, where what was there is not written over. */
  readonly offer: string | undefined;
}

export class Files {
  /** What this page has saved last: later saves go there, while it is as it was left. */
  #copy: { readonly name: string; readonly version: string } | undefined;
  #opened: string | undefined;

  constructor(public name: string) {}

  static async served(): Promise<{ files: Files; bytes: Uint8Array }> {
    const [name, workbook] = await Promise.all([fetch("name").then((answer) => answer.text()), fetch("workbook")]);
    if (!workbook.ok) throw new Error(await workbook.text());
    const files = new Files(name);
    files.#opened = workbook.headers.get("x-version") ?? undefined;
    return { files, bytes: new Uint8Array(await workbook.arrayBuffer()) };
  }

  /** @param as another name than before. */
  async save(bytes: Uint8Array, as = ""): Promise<Saved> {
    const same = as === "" ? this.#copy : undefined;
    const headers = {
      "x-name": encodeURIComponent(as || this.#copy?.name || ""),
      "x-of": encodeURIComponent(this.name),
      ...(same ? { "x-version": same.version } : {}),
    };
    const response = await fetch("save", { method: "POST", headers, body: bytes as Uint8Array<ArrayBuffer> });
    const words = await response.text();
    const version = response.headers.get("x-version");
    const name = decodeURIComponent(response.headers.get("x-name") ?? "");
    if (response.ok && version) {
      this.#copy = { name, version };
      return { words, offer: undefined };
    }
    return { words, offer: name === "" ? undefined : name };
  }

  /** Whether the file it was opened from is another by now. */
  async hasChanged(): Promise<boolean> {
    if (this.#opened === undefined) return false;
    const version = await fetch("version").then(
      (answer) => answer.text(),
      () => this.#opened,
    );
    return version !== this.#opened;
  }
}
