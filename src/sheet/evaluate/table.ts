/** A table of the workbook as structured references see it. */
export interface Table {
  readonly name: string;
  readonly sheet: number;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly headerRows: number;
  readonly totalsRows: number;
  readonly columns: readonly string[];
}
