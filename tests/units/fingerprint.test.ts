import { expect, it } from "vitest";
import { fingerprint } from "../../src/units/fingerprint.ts";

/** FNV-1a of 32 bits (Fowler, Noll, Vo; published test values): "" is 811c9dc5, "a" e40c292c, "foobar" bf9cf968. */
it.each([
  ["", "811c"],
  ["a", "e40c"],
  ["foobar", "bf9c"],
])("of %j begins with the first half of its published FNV-1a", (text, half) => {
  expect(fingerprint(text)).toMatch(new RegExp(`^${half}-[0-9a-f]{4}$`));
});

it("tells ten thousand texts apart, but for a few that chance lets meet", () => {
  const names = new Set(Array.from({ length: 10_000 }, (_, i) => fingerprint(`line ${i}`)));
  // 10 000 of 2^32: about 0.01 meetings are to be expected; both halves together must not be weaker by much.
  expect(names.size).toBeGreaterThan(9_990);
});
