/**
 * A stand-in for Excel's objects on top of office-addin-mock, as strict as the real ones where code goes wrong: what is
 * written waits for sync, what is read must have been loaded and synced, names and sizes must fit, a protected sheet
 * refuses. It knows no trade: a formula's answer comes from the function it is given.
 */
import { OfficeMockObject } from "office-addin-mock";

export type Held = string | number | boolean;
interface FakeCell {
  formula: Held;
  value: Held;
}
export interface FakeSheet {
  name: string;
  visibility: "Visible" | "Hidden";
  isProtected: boolean;
  /** Protected so that nobody lifts it without a word. */
  hasPassword?: boolean;
  /** By "row,column", from 0. */
  readonly cells: Map<string, FakeCell>;
}
export type Evaluate = (formula: string) => Held;

const NOT_READY = /^Error, (?:property was not loaded|context\.sync\(\) was not called)$/;
const LONGEST_NAME = 31;

export class FakeWorkbook {
  readonly sheets: FakeSheet[] = [];
  /** Names of the tables that were added. */
  readonly tables: string[] = [];
  active: { sheet: string; row: number; column: number };
  readonly listeners = { selection: [] as (() => unknown)[], changed: [] as (() => unknown)[] };
  /** Trips to Excel so far. */
  trips = 0;
  /** Of the country this Excel is set to. */
  decimal = ".";

  constructor(
    sheets: Readonly<Record<string, readonly (readonly (Held | null)[])[]>>,
    private readonly evaluate: Evaluate = () => "#NAME?",
  ) {
    for (const [name, rows] of Object.entries(sheets)) {
      const sheet = this.addSheet(name);
      rows.forEach((row, r) => {
        row.forEach((held, c) => {
          if (held !== null && held !== "") this.enter(sheet, r, c, held);
        });
      });
    }
    this.active = { sheet: this.sheets[0]?.name ?? "", row: 0, column: 0 };
  }

  /** Every formula is evaluated again. */
  rebuild(): void {
    for (const { cells } of this.sheets)
      for (const cell of cells.values())
        if (typeof cell.formula === "string" && cell.formula.startsWith("=") && cell.value !== cell.formula)
          cell.value = this.evaluate(cell.formula);
  }

  addSheet(name: string, like?: FakeSheet): FakeSheet {
    if (name.length > LONGEST_NAME || this.sheets.some((sheet) => sheet.name.toLowerCase() === name.toLowerCase()))
      throw new Error(`InvalidArgument: a sheet cannot be called ${name}`);
    const cells = new Map([...(like?.cells ?? [])].map(([key, cell]) => [key, { ...cell }]));
    const made: FakeSheet = {
      name,
      visibility: "Visible",
      isProtected: like?.isProtected ?? false,
      hasPassword: like?.hasPassword ?? false,
      cells,
    };
    this.sheets.push(made);
    return made;
  }

  sheet(name: string): FakeSheet {
    const found = this.sheets.find((sheet) => sheet.name === name);
    if (!found) throw new Error(`ItemNotFound: ${name}`);
    return found;
  }

  enter(sheet: FakeSheet, row: number, column: number, held: Held): void {
    const key = `${row},${column}`;
    if (held === "") sheet.cells.delete(key);
    else if (typeof held === "string" && held.startsWith("="))
      sheet.cells.set(key, { formula: held, value: this.evaluate(held) });
    else {
      // A leading apostrophe says text and is not part of it.
      const plain = typeof held === "string" && held.startsWith("'") ? held.slice(1) : held;
      sheet.cells.set(key, { formula: plain, value: plain });
    }
  }

  /** A cell as a person sees it. */
  at(sheet: string, row: number, column: number): FakeCell {
    return this.sheet(sheet).cells.get(`${row},${column}`) ?? { formula: "", value: "" };
  }

  async select(sheet: string, row: number, column: number): Promise<void> {
    this.active = { sheet, row, column };
    for (const listener of this.listeners.selection) await listener();
  }
}

type Read = Readonly<Record<string, () => unknown>>;
interface Parts {
  readonly kind: string;
  readonly read: Read;
  readonly write?: Readonly<Record<string, (value: never) => void>>;
  readonly call?: Readonly<Record<string, unknown>>;
  /** Called with the names below a collection's items. */
  readonly loadItems?: (names: string) => void;
}

class Context {
  readonly #writes: (() => void)[] = [];
  readonly #objects: (() => Promise<void>)[] = [];
  readonly workbook: unknown;
  readonly application: unknown;

  constructor(private readonly book: FakeWorkbook) {
    this.workbook = workbookObject(this, book);
    this.application = this.object({
      kind: "application",
      read: { decimalSeparator: () => book.decimal },
      call: {
        calculate: (type: string) => {
          if (type !== "FullRebuild") throw new Error(`InvalidArgument: ${type} leaves a cell at #BUSY!`);
          this.queue(() => book.rebuild());
        },
      },
    });
  }

  queue(write: () => void): void {
    this.#writes.push(write);
  }

  /** An object that throws where office-addin-mock only answers with a text. */
  object({ kind, read, write = {}, call = {}, loadItems }: Parts): never {
    const mock = new OfficeMockObject(
      Object.fromEntries(Object.keys(read).map((name) => [name, ""])),
      "excel" as never,
    );
    let wanted: string[] = [];
    const load = (names: string | readonly string[]) => {
      for (const name of String(names).split(",")) {
        const [first = "", ...below] = name.trim().split("/");
        if (!(first in read)) throw new Error(`${kind} has no property ${first} to load`);
        if (below.length > 0) loadItems?.(below.join("/"));
        wanted.push(first);
      }
      return proxy;
    };
    this.#objects.push(async () => {
      const now = wanted;
      wanted = [];
      for (const name of new Set(now)) {
        mock["setValue"](name, read[name]!());
        mock.load(name);
      }
      if (now.length > 0) await mock.sync();
    });
    const proxy: object = new Proxy(
      {},
      {
        get: (_, name) => {
          if (typeof name === "symbol" || name === "then") return undefined;
          if (name === "load") return load;
          if (name in call) return call[name];
          if (!(name in read)) throw new Error(`${kind} has no property ${name}`);
          const value = mock[name] as unknown;
          if (typeof value === "string" && NOT_READY.test(value)) throw new Error(`${kind}.${name}: ${value}`);
          return value;
        },
        set: (_, name, value) => {
          const setter = write[String(name)];
          if (!setter) throw new Error(`${kind} has no property ${String(name)} to write`);
          this.queue(() => setter(value as never));
          return true;
        },
      },
    );
    return proxy as never;
  }

  sync = async (): Promise<void> => {
    this.book.trips++;
    for (const write of this.#writes.splice(0)) write();
    // Items of a collection come to be while it is read.
    for (let i = 0; i < this.#objects.length; i++) await this.#objects[i]!();
  };

  get unsent(): number {
    return this.#writes.length;
  }
}

function workbookObject(context: Context, book: FakeWorkbook): never {
  const active = () => book.sheet(book.active.sheet);
  const event = (listeners: (() => unknown)[]) => ({
    add: (listener: () => unknown) => context.queue(() => listeners.push(listener)),
  });
  return context.object({
    kind: "workbook",
    read: {},
    call: {
      worksheets: worksheetsObject(context, book, event(book.listeners.changed)),
      onSelectionChanged: event(book.listeners.selection),
      getActiveCell: () =>
        rangeObject(context, book, active, () => ({
          row: book.active.row,
          column: book.active.column,
          rows: 1,
          columns: 1,
        })),
    },
  });
}

function worksheetsObject(context: Context, book: FakeWorkbook, onChanged: object): never {
  let below: string[] = [];
  return context.object({
    kind: "worksheets",
    read: {
      items: () =>
        book.sheets.map((sheet) => {
          const item = sheetObject(context, book, () => sheet) as { load(names: string): void };
          if (below.length > 0) item.load(below.join(","));
          return item;
        }),
    },
    loadItems: (names) => {
      below = [...below, names];
    },
    call: {
      onChanged,
      onCalculated: { add: () => undefined },
      getItem: (name: string) => sheetObject(context, book, () => book.sheet(name)),
      add: (name: string) => {
        let made: FakeSheet | undefined;
        context.queue(() => {
          made = book.addSheet(name);
        });
        return sheetObject(context, book, () => made!);
      },
    },
  });
}

function sheetObject(context: Context, book: FakeWorkbook, sheet: () => FakeSheet): never {
  return context.object({
    kind: "worksheet",
    read: { name: () => sheet().name, visibility: () => sheet().visibility },
    write: {
      name: (name: string) => {
        if (name.length > LONGEST_NAME || book.sheets.some((other) => other !== sheet() && other.name === name))
          throw new Error(`InvalidArgument: a sheet cannot be called ${name}`);
        sheet().name = name;
      },
    },
    call: {
      protection: context.object({
        kind: "protection",
        read: { protected: () => sheet().isProtected },
        call: {
          unprotect: () =>
            context.queue(() => {
              if (sheet().hasPassword) throw new Error("AccessDenied: the sheet is protected by a password");
              sheet().isProtected = false;
            }),
        },
      }),
      tables: context.object({
        kind: "tables",
        read: {},
        call: {
          add: () =>
            context.object({
              kind: "table",
              read: {},
              write: {
                name: ((name: string) => {
                  if (book.tables.includes(name)) throw new Error(`InvalidArgument: a second table ${name}`);
                  book.tables.push(name);
                }) as never,
              },
            }),
        },
      }),
      activate: () => context.queue(() => undefined),
      delete: () =>
        context.queue(() => {
          book.sheets.splice(book.sheets.indexOf(sheet()), 1);
        }),
      getUsedRangeOrNullObject: () => rangeObject(context, book, sheet, () => usedArea(sheet())),
      getRangeByIndexes: (row: number, column: number, rows: number, columns: number) =>
        rangeObject(context, book, sheet, () => ({ row, column, rows, columns })),
      copy: () => {
        let made: FakeSheet | undefined;
        context.queue(() => {
          made = book.addSheet(`${sheet().name} (2)`.slice(-LONGEST_NAME), sheet());
        });
        return sheetObject(context, book, () => made!);
      },
    },
  });
}

interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Text written is taken as if typed: figures become numbers, and what could be a day becomes its serial number. */
const asTyped = (held: Held): Held =>
  typeof held === "string" && /^\d+(?:[./]\d+)?$/.test(held) ? (held.includes("/") ? SOME_DAY : Number(held)) : held;
const SOME_DAY = 46_026;

function usedArea({ cells }: FakeSheet): Area | undefined {
  const places = [...cells.keys()].map((key) => key.split(",").map(Number) as [number, number]);
  if (places.length === 0) return undefined;
  const [top, left] = [Math.min(...places.map(([r]) => r)), Math.min(...places.map(([, c]) => c))];
  return {
    row: top,
    column: left,
    rows: Math.max(...places.map(([r]) => r)) - top + 1,
    columns: Math.max(...places.map(([, c]) => c)) - left + 1,
  };
}

function rangeObject(
  context: Context,
  book: FakeWorkbook,
  sheet: () => FakeSheet,
  area: () => Area | undefined,
): never {
  const there = (): Area => {
    const found = area();
    if (!found) throw new Error("ItemNotFound: a null object has no cells");
    return found;
  };
  const each = (of: "formula" | "value") => {
    const { row, column, rows, columns } = there();
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => sheet().cells.get(`${row + r},${column + c}`)?.[of] ?? ""),
    );
  };
  const fits = (values: readonly (readonly unknown[])[]) => {
    const { rows, columns } = there();
    if (values.length !== rows || values.some((row) => row.length !== columns))
      throw new Error("InvalidArgument: the array does not have the size of the range");
    if (sheet().isProtected) throw new Error("AccessDenied: the sheet is protected");
  };
  const enter = (values: readonly (readonly Held[])[]) => {
    fits(values);
    const { row, column } = there();
    values.forEach((cells, r) => {
      cells.forEach((held, c) => {
        book.enter(sheet(), row + r, column + c, asTyped(held));
      });
    });
  };
  const nothing = (value: never) => void value;
  return context.object({
    kind: "range",
    read: {
      isNullObject: () => area() === undefined,
      values: () => (area() ? each("value") : []),
      formulas: () => (area() ? each("formula") : []),
      rowIndex: () => area()?.row ?? 0,
      columnIndex: () => area()?.column ?? 0,
      rowCount: () => area()?.rows ?? 0,
      columnCount: () => area()?.columns ?? 0,
      address: () => `${sheet().name}!R${there().row + 1}C${there().column + 1}`,
    },
    write: { values: enter as never, formulas: enter as never, numberFormat: fits as never },
    call: {
      worksheet: sheetObject(context, book, sheet),
      select: () => context.queue(() => void book.select(sheet().name, there().row, there().column)),
      format: { font: context.object({ kind: "font", read: {}, write: { bold: nothing } }) },
    },
  });
}

/**
 * What is where Excel's global `Excel` does. A run that ends with unsent writes is caught, for Excel sends them late.
 */
export const standIn = (book: FakeWorkbook) => ({
  run: async <T>(action: (context: never) => Promise<T>): Promise<T> => {
    const context = new Context(book);
    const answer = await action(context as never);
    if (context.unsent > 0) throw new Error(`${context.unsent} writes were never sent: context.sync() is missing`);
    return answer;
  },
});
