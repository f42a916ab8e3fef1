import { describe, expect, it } from "vitest";
import { callRecord } from "../../../src/cells/call/call.ts";
import { findRecord } from "../../../src/cells/catalogue.ts";
import type { AnyRecord } from "../../../src/cells/record/record.ts";
import { excelFunction } from "../../../src/hosts/excel/excel-function.ts";
import { LongCalls, type WorkerLike } from "../../../src/hosts/excel/long-calls.ts";
import { functionMetadata } from "../../../src/hosts/excel/metadata.ts";
import { outlined, outlineOf } from "../../../src/hosts/excel/outlined.ts";
import { guideEntry } from "../../../src/hosts/pane/guide/entry.ts";
import { CellError, type CellValue } from "../../../src/units/cell.ts";

/** A worker whose answers the test gives by hand. */
class WorkerStandIn implements WorkerLike {
  onmessage: WorkerLike["onmessage"] = null;
  onerror: WorkerLike["onerror"] = null;
  readonly asked: { name: string; given: unknown }[] = [];
  ended = false;
  postMessage(data: never): void {
    this.asked.push(data);
  }
  terminate(): void {
    this.ended = true;
  }
  answer(data: unknown): void {
    this.onmessage!({ data } as MessageEvent);
  }
}

function standIns() {
  const workers: WorkerStandIn[] = [];
  const calls = new LongCalls(() => workers[workers.push(new WorkerStandIn()) - 1]!);
  return { workers, calls };
}

describe("long calls", () => {
  it("run one at a time in one worker, in the order they were asked", async () => {
    const { workers, calls } = standIns();
    const [first, second] = [calls.call("A", [1]), calls.call("B", [2])];
    expect(workers).toHaveLength(1);
    expect(workers[0]!.asked).toEqual([{ name: "A", given: [1] }]);
    workers[0]!.answer(10);
    expect(await first.answer).toBe(10);
    expect(workers[0]!.asked[1]).toEqual({ name: "B", given: [2] });
    workers[0]!.answer([[20]]);
    expect(await second.answer).toEqual([[20]]);
    expect(workers).toHaveLength(1);
  });

  it("cancelled while waiting never start", async () => {
    const { workers, calls } = standIns();
    const [first, second, third] = ["A", "B", "C"].map((name) => calls.call(name, []));
    second!.cancel();
    workers[0]!.answer(1);
    workers[0]!.answer(3);
    expect(await second!.answer).toEqual(new CellError("#N/A", expect.stringContaining("cancelled")));
    expect(await Promise.all([first!.answer, third!.answer])).toEqual([1, 3]);
    expect(workers[0]!.asked.map(({ name }) => name)).toEqual(["A", "C"]);
  });

  it("cancelled while running end their worker; the next gets a fresh one", async () => {
    const { workers, calls } = standIns();
    const [first, second] = [calls.call("A", []), calls.call("B", [])];
    first.cancel();
    expect(workers[0]!.ended).toBe(true);
    expect(workers[1]!.asked).toEqual([{ name: "B", given: [] }]);
    workers[1]!.answer("done");
    expect(await second.answer).toBe("done");
    first.cancel(); // too late to matter
    expect(workers[1]!.ended).toBe(false);
  });

  it("that ask the same share one run, whatever array the arguments came in", async () => {
    const { workers, calls } = standIns();
    const ask = (second: CellValue) => calls.call("A", [[["10 ga", second]]]);
    const [running, same, other, waiting] = [ask(null), ask(null), ask(""), ask("")];
    workers[0]!.answer(1);
    workers[0]!.answer(2);
    expect(await Promise.all([running, same, other, waiting].map((call) => call.answer))).toEqual([1, 1, 2, 2]);
    expect(workers[0]!.asked).toHaveLength(2);
    ask(null);
    expect(workers[0]!.asked).toHaveLength(3); // an answer that was given is not kept here
  });

  it("end a shared run only when nobody waits for it any more", async () => {
    const { workers, calls } = standIns();
    const [first, second] = [calls.call("A", []), calls.call("A", [])];
    first.cancel();
    first.cancel();
    expect(workers[0]!.ended).toBe(false);
    workers[0]!.answer(1);
    expect(await second.answer).toBe(1);
    expect(await first.answer).toEqual(new CellError("#N/A", expect.stringContaining("cancelled")));
    const [third, fourth] = [calls.call("B", []), calls.call("B", [])];
    third.cancel();
    fourth.cancel();
    expect(workers[0]!.ended).toBe(true);
  });

  it("say so when their worker fails, and the next call still runs", async () => {
    const { workers, calls } = standIns();
    const [first, second] = [calls.call("A", []), calls.call("B", [])];
    workers[0]!.onerror!({ message: "out of memory" } as ErrorEvent);
    expect(await first.answer).toEqual(new CellError("#VALUE!", expect.stringContaining("out of memory")));
    workers[1]!.answer(2);
    expect(await second.answer).toBe(2);
  });

  it("say so when no worker can be started", async () => {
    const calls = new LongCalls(() => {
      throw new Error("no workers here");
    });
    expect(await calls.call("A", []).answer).toEqual(
      new CellError("#VALUE!", expect.stringMatching(/^A must be .+; got no workers here$/)),
    );
  });
});

describe("a long function in Excel", () => {
  const maker = { Error: class {} };
  const record = { ...findRecord("BEND.SETBACK")!, long: true as const };

  it("hands Excel's cancellation on and takes only the declared arguments", async () => {
    const { workers, calls } = standIns();
    const invocation: { onCanceled?: () => void } = {};
    const answer = excelFunction(record, maker, calls)(
      [[0.04]],
      [[0.16]],
      [[90]],
      null,
      invocation,
    ) as Promise<unknown>;
    expect(workers[0]!.asked).toEqual([{ name: "BEND.SETBACK", given: [[[0.04]], [[0.16]], [[90]], null] }]);
    invocation.onCanceled!();
    await expect(answer).rejects.toBeInstanceOf(maker.Error);
    expect(workers[0]!.ended).toBe(true);
  });

  it("answers where there are no workers as long as its calculation is there", () => {
    expect(excelFunction(record, maker)([[0.04]], [[0.16]], [[90]], null, {})).toEqual([[expect.closeTo(0.2, 12)]]);
  });
});

describe("the outline of a long function", () => {
  const maker = { Error: class {} };
  const outline = outlined(outlineOf({ ...findRecord("BEND.SETBACK")!, long: true }));

  it("is plain data, and tells the guide and functions.json the same as the record", () => {
    const data = outlineOf({ ...findRecord("BEND.SETBACK")!, long: true });
    expect(JSON.parse(JSON.stringify(data))).toEqual(data);
    const record = { ...findRecord("BEND.SETBACK")!, long: true as const };
    expect(guideEntry(outline)).toEqual(guideEntry(record));
    expect(functionMetadata(outline, "")).toEqual(functionMetadata(record, ""));
  });

  it("hands a call on that reached it through a quick function", async () => {
    const { workers, calls } = standIns();
    const quick: AnyRecord = {
      ...findRecord("WORKING")!,
      calculate: () => {
        throw callRecord(outline, [0.04, 0.16, 90]).value;
      },
    };
    const answer = excelFunction(quick, maker, calls)("BEND.SETBACK", 0.04, 0.16, 90) as Promise<unknown>;
    workers[0]!.answer([["Symbol"]]);
    expect(await answer).toEqual([["Symbol"]]);
    expect(workers[0]!.asked[0]!.name).toBe("WORKING");
  });

  it("is refused where there are no workers", () => {
    expect(() => excelFunction(outline, maker)([[0.04]], [[0.16]], [[90]])).toThrow(maker.Error as never);
  });
});
