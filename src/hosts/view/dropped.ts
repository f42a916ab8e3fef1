/** A file that is dropped anywhere on the page. */

/** @param take told whether it is a workbook; every other file may be a parts list. */
export function takeDropped(take: (name: string, bytes: Uint8Array, isWorkbook: boolean) => Promise<void>): void {
  const { classList } = document.body;
  addEventListener("dragover", (event) => {
    if (!event.dataTransfer?.types.includes("Files")) return;
    event.preventDefault();
    classList.add("dropping");
  });
  addEventListener("dragleave", (event) => {
    if (event.relatedTarget === null) classList.remove("dropping");
  });
  addEventListener("drop", async (event) => {
    const [file] = event.dataTransfer?.files ?? [];
    classList.remove("dropping");
    if (!file) return;
    event.preventDefault();
    await take(file.name, new Uint8Array(await file.arrayBuffer()), /\.xls[xm]$/i.test(file.name));
  });
}
