/** Calls a registered function as Excel does: every argument a block or null, the invocation behind the last one. */
import type { Page } from "playwright-core";
import type { Argument } from "../../../src/cells/call/call.ts";
import { functionId } from "../../../src/hosts/excel/function-id.ts";

export interface PageError {
  readonly error: { readonly code: string; readonly message?: string };
}
export type PageAnswer = unknown;

/** Rows as the function returned them; error objects, thrown or inside rows, come back as { error }. */
export const callInPage = (page: Page, name: string, given: readonly Argument[], count: number): Promise<PageAnswer> =>
  page.evaluate(
    async ([id, values, parameters]) => {
      const host = globalThis as unknown as {
        associated: Map<string, (...given: unknown[]) => unknown>;
        CustomFunctions: { Error: new (code: string) => { code: string; message?: string } };
      };
      const { Error: CellError } = host.CustomFunctions;
      const shown = (value: unknown): unknown =>
        Array.isArray(value) ? value.map(shown) : value instanceof CellError ? { error: { ...value } } : value;
      const asBlock = (value: unknown): unknown =>
        value === undefined || value === null
          ? null
          : Array.isArray(value)
            ? value.map((row) => row.map(asError))
            : [[asError(value)]];
      const asError = (value: unknown): unknown =>
        value !== null && typeof value === "object" ? new CellError((value as { code: string }).code) : value;
      const blocks = Array.from({ length: parameters as number }, (_, i) => asBlock((values as unknown[])[i]));
      try {
        return shown(await host.associated.get(id as string)!(...blocks, { functionName: id }));
      } catch (problem) {
        if (problem instanceof CellError) return shown(problem);
        throw problem;
      }
    },
    [functionId(name), given, count] as const,
  );
