import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sharing } from "../../../renderer/state/share.ts";

/** Plain data as a worker's answer is made of, columns of numbers among it. */
const data = fc.letrec<{ value: unknown }>((tie) => ({
  value: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    fc.oneof(fc.double(), fc.string(), fc.boolean(), fc.constantFrom(null, undefined)),
    fc.float64Array({ maxLength: 4 }),
    fc.uint8Array({ maxLength: 4 }),
    fc.array(tie("value"), { maxLength: 4 }),
    fc.dictionary(fc.constantFrom("a", "b", "c"), tie("value"), { noNullPrototype: true }),
  ),
})).value;

describe("sharing", () => {
  test("changes no value, whatever came before", () => {
    fc.assert(
      fc.property(data, data, (before, now) => {
        expect(sharing(before, now)).toEqual(structuredClone(now));
      }),
    );
  });

  test("gives back the very object that came before where nothing is different", () => {
    fc.assert(
      fc.property(data, (before) => {
        expect(sharing(before, structuredClone(before))).toBe(before);
      }),
    );
  });

  test("keeps the parts that are the same beside one that is not, and leaves both sides as they were", () => {
    const before = { flap: { width: 0.24 }, angle: Float64Array.of(1, 2), list: [{ id: "a" }, { id: "b" }] };
    const now = { flap: { width: 0.24 }, angle: Float64Array.of(1, 3), list: [{ id: "a" }, { id: "c" }] };
    const [flap, angle, first] = [now.flap, now.angle, now.list[0]];
    const shared = sharing(before, now);
    expect(shared).toEqual(now);
    expect(shared.flap).toBe(before.flap);
    expect(shared.angle).toBe(angle);
    expect(shared.list[0]).toBe(before.list[0]);
    expect(shared.list[1]).not.toBe(before.list[1]);
    expect([now.flap, now.list[0], before.list[1]]).toEqual([flap, first, { id: "b" }]);
  });

  test("tells apart what looks alike: −0 and 0, a key that lacks and one that is undefined, kinds of columns", () => {
    expect(sharing([0], [-0])).toEqual([-0]);
    expect(sharing({}, { a: undefined })).toStrictEqual({ a: undefined });
    expect(sharing({ a: undefined }, {})).toStrictEqual({});
    expect(sharing(Float32Array.of(1), Float64Array.of(1))).toEqual(Float64Array.of(1));
    expect(sharing({ 0: 1 }, [1])).toEqual([1]);
  });
});
