/** A cell of a grid by its row and column, and how the page knows it by its id. */

export interface Spot {
  readonly row: number;
  readonly column: number;
}
export interface TypedSpot extends Spot {
  readonly typed: string;
}

export const steps = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);
export const idOf = ({ row, column }: Spot): string => `cell-${row}-${column}`;
export const sameSpot = (a: Spot | undefined, b: Spot): boolean => a?.row === b.row && a.column === b.column;

export function spotOf(target: EventTarget | null): Spot | undefined {
  const id = (target as Element | null)?.closest<HTMLElement>("[id^=cell-]")?.id.split("-");
  return id && { row: Number(id[1]), column: Number(id[2]) };
}
