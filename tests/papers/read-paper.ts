/** Papers as a person reads them: the rows of their tables, without markup. */
export const rowsIn = (markup: string): string[][] =>
  [...markup.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row]) =>
    [...row!.matchAll(/<td[^>]*>(.*?)<\/td>/gs)].map(([, cell]) => cell!.replace(/<[^>]+>/g, "")),
  );

/** "1,234.50" as cents. */
export const centsOf = (text: string): number => Math.round(Number(text.replaceAll(",", "")) * 100);
