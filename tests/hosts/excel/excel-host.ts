/**
 * Calls the built functions through Microsoft's own runtime, as Excel does: ids, number of arguments and flags come from
 * functions.json, values are blocks of cells, results come back in batches some 50 ms later.
 */
import type { Browser, Page } from "playwright-core";
import type { Argument } from "../../../src/cells/call/call.ts";
import { CellError, type CellMatrix, type CellValue, type ErrorCode } from "../../../src/units/cell.ts";
import { BRIDGE_SCRIPT } from "./bridge-script.ts";
import { PLATFORMS, type Platform, routeOfficeJs } from "./office-js.ts";

export interface Metadata {
  readonly allowErrorForDataTypeAny?: boolean;
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly parameters: readonly object[];
    readonly options?: { readonly cancelable?: boolean };
  }[];
}
type Answered = CellValue | CellMatrix;
interface Raw {
  readonly ok: boolean;
  readonly value: unknown;
  readonly error?: number;
}
type Sent = [call: number, id: string, values: unknown[], address: string, flags: number];

/** Numbers by which the runtime reports an error that was thrown. */
const THROWN: Readonly<Record<number, ErrorCode>> = { 1: "#N/A", 5: "#DIV/0!", 6: "#NUM!", 7: "#VALUE!", 8: "#NULL!" };
const FLAG = { cancelable: 1, errorsIn: 4, richData: 8 };

export interface HostOptions {
  readonly platform?: Platform;
  /** How this Excel sends a blank cell of a range; older builds send 0. */
  readonly blank?: null | "" | 0;
  /** Cells as data types, the way builds that know them send them. */
  readonly richData?: boolean;
}

export class ExcelHost {
  readonly complaints: string[] = [];
  readonly missing: string[] = [];
  /** Every address the page and its workers asked for. */
  readonly asked: string[] = [];
  #last = 0;
  #batch: { sent: Sent; done: (raw: Raw) => void }[] = [];

  private constructor(
    readonly page: Page,
    /** What this Excel holds of functions.json; a test may put another version's in its place. */
    public metadata: Metadata,
    private readonly options: HostOptions,
  ) {}

  static async open(browser: Browser, origin: string, metadata: Metadata, options: HostOptions = {}) {
    const context = await browser.newContext();
    const page = await context.newPage();
    const host = new ExcelHost(page, metadata, options);
    page.on("pageerror", (problem) => host.complaints.push(String(problem)));
    context.on("request", (request) => host.asked.push(request.url()));
    await page.addInitScript(BRIDGE_SCRIPT);
    await routeOfficeJs(page, host.missing);
    await page.goto(`${origin}/taskpane.html?${PLATFORMS[options.platform ?? "Windows"].query}`);
    await page.waitForFunction("_richApiNativeBridge.onMessageFromHost && typeof CustomFunctions.Error === 'function'");
    return host;
  }

  /** One call, sent together with all others of the same turn, as a calculation sends them. */
  async call(name: string, given: readonly Argument[]): Promise<Answered> {
    return (await this.start(name, given)).answer;
  }

  /** The same, with the means to cancel it. */
  async start(
    name: string,
    given: readonly Argument[],
  ): Promise<{ answer: Promise<Answered>; cancel(): Promise<void> }> {
    const listed = this.metadata.functions.find((one) => one.name === name);
    if (!listed) throw new Error(`function must be in functions.json; got ${name}`);
    const { blank = null, richData = false } = this.options;
    const values = listed.parameters.map((_, i) => asSent(given[i], blank, richData));
    const flags =
      (listed.options?.cancelable ? FLAG.cancelable : 0) |
      (this.metadata.allowErrorForDataTypeAny ? FLAG.errorsIn : 0) |
      (richData ? FLAG.richData : 0);
    const call = ++this.#last;
    const answer = new Promise<Raw>((done) => {
      if (this.#batch.length === 0) setTimeout(() => void this.#flush());
      this.#batch.push({ sent: [call, listed.id, values, "Sheet1!A1", flags], done });
    }).then(asAnswered);
    return { answer, cancel: () => this.page.evaluate(`excelHost.cancel(${call})`) };
  }

  async #flush(): Promise<void> {
    const batch = this.#batch.splice(0);
    const answers = (await this.page.evaluate(
      (calls) => (globalThis as never as { excelHost: { call(calls: unknown): Promise<Raw[]> } }).excelHost.call(calls),
      batch.map(({ sent }) => sent),
    )) as Raw[];
    batch.forEach(({ done }, i) => {
      done(answers[i]!);
    });
  }
}

/** Every parameter is declared as a matrix: Excel sends a block, or null where nothing is given. */
function asSent(given: Argument, blank: null | "" | 0, richData: boolean): unknown {
  if (given === undefined || given === null) return null;
  const rows = Array.isArray(given) ? given : [[given]];
  return rows.map((row) =>
    row.map((cell) => {
      if (cell === null) return blank;
      if (!(cell instanceof CellError)) return cell;
      return richData
        ? { value: JSON.stringify({ type: "Error", basicType: "Error", basicValue: cell.code }) }
        : { type: "CustomFunctionError", code: cell.code };
    }),
  );
}

const isErrorObject = (cell: unknown): cell is { code: ErrorCode; message?: string } =>
  typeof cell === "object" && cell !== null && (cell as { valueType?: string }).valueType === "CustomFunctionError";

function asAnswered({ ok, value, error = 0 }: Raw): Answered {
  if (!ok) {
    const code = THROWN[error];
    if (!code) throw new Error(`Excel would show its own error: the runtime reports ${error} ${JSON.stringify(value)}`);
    return typeof value === "string" && value !== "" ? new CellError(code, value) : new CellError(code);
  }
  const cellOf = (cell: unknown): CellValue =>
    isErrorObject(cell) ? new CellError(cell.code, cell.message) : (cell as CellValue);
  const rows = Array.isArray(value) ? (value as unknown[][]).map((row) => row.map(cellOf)) : [[cellOf(value)]];
  return rows.length === 1 && rows[0]!.length === 1 ? rows[0]![0]! : rows;
}
