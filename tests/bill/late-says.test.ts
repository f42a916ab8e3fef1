/** Late lines, and how tools were drawn, in words. */
import { describe, expect, it } from "vitest";
import { drawnSays, throatSays } from "../../src/bill/drawn-says.ts";
import { lateSays, savedBySays, savedSays } from "../../src/bill/late-says.ts";
import { seconds } from "../../src/calc/time/seconds.ts";
import { shopOf } from "./shop.ts";

describe("late lines", () => {
  it.each([
    [0, 0, ""],
    [3, 0, "would save none"],
    [3, 2, "would save 2 of them; the price does not include it"],
    [3, 3, "would save all of them; the price does not include it"],
  ])("%d of them, %d saved: %j", (late, saved, says) => {
    if (says === "") expect(savedSays({ late, saved })).toBe("");
    else expect(savedSays({ late, saved })).toBe(`overtime, a second shift or sending out ${says}`);
  });
  it("are late by working hours, to a tenth", () => {
    expect(lateSays({ lateBy: seconds(1.26 * 3600) })).toBe("Late by 1.3 working hours.");
    expect(lateSays({ lateBy: seconds(1200 * 3600) })).toBe("Late by 1,200.0 working hours.");
  });
  it("are saved by what is offered, or by nothing", () => {
    expect(
      ["breaks it", "outside", "overtime", "second shift"].map((verdict) => savedBySays(verdict as "overtime")),
    ).toEqual(["nothing offered saves it", "sending out saves it", "overtime saves it", "second shift saves it"]);
  });
});

describe("tools in a picture", () => {
  const none = { punch: [], die: [] };
  it.each([
    [{ isPlain: false, assumed: { punch: ["height"], die: [] }, inTheWay: undefined }, ""],
    [{ isPlain: true, assumed: none, inTheWay: undefined }, "tools drawn from their tables"],
    [
      { isPlain: true, assumed: { punch: ["height", "relief"], die: ["width"] }, inTheWay: undefined },
      "tools drawn from their tables; assumed: punch height, punch relief, die width",
    ],
    [
      { isPlain: true, assumed: { punch: [], die: ["width"] }, inTheWay: {} },
      "tools drawn from their tables; assumed slim: die width",
    ],
  ])("are said to be as they were drawn: %#", (strip, says) => {
    expect(drawnSays(strip as unknown as Parameters<typeof drawnSays>[0])).toBe(says);
  });
  it("say which way a punch with a throat is mounted, and nothing of another", () => {
    const [punch] = shopOf().punches;
    const deep = { ...punch!, reliefDepth: punch!.height };
    const plain = { ...punch!, reliefDepth: undefined };
    expect(throatSays({ isPlain: true }, deep as typeof punch)).toBe("its throat to the operator");
    expect(throatSays({ isPlain: false }, deep as typeof punch)).toBe("its throat as in the pictures");
    expect(throatSays(undefined, deep as typeof punch)).toBe("");
    expect(throatSays({ isPlain: true }, plain as typeof punch)).toBe("");
    expect(throatSays({ isPlain: true }, undefined)).toBe("");
  });
});
