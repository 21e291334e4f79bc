// The least hold: the search on functions with known least places, then doors against brute force.
import { describe, expect, test } from "vitest";
import { studyView } from "../../../core/review/study-view.ts";
import { words } from "../../../core/review/words.ts";
import { type BestFound, type BestRequest, findBest, searchBest } from "../../../core/study/best.ts";
import { type Found, haltonPlace, refined, type Worth } from "../../../core/study/best-search.ts";
import { bestEdits, bestSays } from "../../../core/study/best-words.ts";
import { doorMap } from "../../../core/study/map.ts";
import { parseAxis } from "../../../core/study/map-axis.ts";
import { opened } from "../doors.ts";
import { GOOD } from "../review/doors.ts";

describe("the search", () => {
  function least(start: readonly number[], worth: (p: readonly number[]) => Worth): Found<Worth> {
    const search = refined({ place: start, worth: worth(start) }, worth);
    for (;;) {
      const step = search.next();
      if (step.done === true) return step.value;
    }
  }

  test("Halton's first points (Halton 1960)", () => {
    expect([1, 2, 3, 4].map((i) => haltonPlace(i, 2))).toEqual([
      [1 / 2, 1 / 3],
      [1 / 4, 2 / 3],
      [3 / 4, 1 / 3 / 3],
      [1 / 8, 1 / 3 + 1 / 9],
    ]);
  });

  test("a bowl, and a corner of the square", () => {
    const bowl = least([0.1, 0.9], ([x, y]) => ({ barred: 0, value: (x - 0.3) ** 2 + (y - 0.6) ** 2 }));
    expect(Math.hypot(bowl.place[0] - 0.3, bowl.place[1] - 0.6)).toBeLessThan(2e-3);
    expect(least([0.5, 0.5], ([x, y]) => ({ barred: 0, value: x + 2 * y })).place).toEqual([0, 0]);
  });

  test("a barred region with a slanting edge is followed to its best point: x + y least where x y ≥ 1/4 is (1/2, 1/2)", () => {
    const found = least([0.9, 0.4], ([x, y]) => ({ barred: x * y < 0.25 ? 1 : 0, value: x + y }));
    expect(found.worth.barred).toBe(0);
    expect(found.worth.value).toBeLessThan(1.005);
  });

  test("from a barred start it finds a place that is not", () => {
    const found = least([0.1, 0.1], ([x, y]) => ({
      barred: Math.max(0, Math.ceil(10 * (0.7 - x))),
      value: y,
    }));
    expect([found.worth.barred, found.place[1]]).toEqual([0, 0]);
  });
});

const view = () => studyView(words("metric"));

const good = opened(GOOD);

function axis(text: string) {
  const read = parseAxis(text, good.door);
  if (!read.ok) throw new Error(read.error.message);
  return read.axis;
}

function best(over: readonly string[], options: Partial<BestRequest> = {}, data: unknown = GOOD): BestFound {
  const { file, door } = opened(data);
  const found = findBest(file, door, { over: over.map(axis), ...options }, view());
  if (!found.ok) throw new Error(found.errors.map((e) => e.message).join("\n"));
  return found;
}

/** Every value of a map by place. */
function mapped(of: string, x: string, y: string | null) {
  const request = { x: axis(x), y: y === null ? null : axis(y), of };
  const made = doorMap(good.file, good.door, request, view());
  if (!made.ok) throw new Error("no map");
  const values = new Map<string, unknown>();
  for (const point of made.map.points()) values.set(`${point.x},${point.y}`, point.value);
  return values;
}

/** The least hold of a grid with no failing finding, the timer's own aside: brute force. */
function bruteForce(x: string, y: string | null): number {
  const holds = mapped("hold.required", x, y);
  const barred = new Set<string>();
  for (const { id } of view().concerns) {
    if (/^(hold|timer)\./.test(id)) continue;
    for (const [place, status] of mapped(id, x, y)) if (status === "fail") barred.add(place);
  }
  const kept = [...holds].filter(([place, hold]) => typeof hold === "number" && !barred.has(place));
  return Math.min(...kept.map(([, hold]) => hold as number));
}

describe("doors against brute force", () => {
  test("one input: as good as the best of 121 gaps", () => {
    const range = "magnets.gap=2 mm..9 mm";
    const found = best([`${range}:2`]);
    expect(found.kept).toBe(true);
    expect(found.hold as number).toBeLessThanOrEqual(bruteForce(`${range}:121`, null) * 1.001);
    expect(found.hold as number).toBeLessThanOrEqual((found.holdBefore as number) * (1 + 1e-6));
  }, 120_000);

  test("two inputs: as good as the best of 17 × 17, and what binds is told", () => {
    const [gap, slot] = ["magnets.gap=3 mm..8 mm", "latch.slotWidth=10 mm..18 mm"];
    const found = best([`${gap}:2`, `${slot}:2`]);
    expect(found.kept).toBe(true);
    expect(found.hold as number).toBeLessThanOrEqual(bruteForce(`${gap}:17`, `${slot}:17`) * 1.001);
    expect(found.binding.map(({ key, direction }) => `${key} ${direction}`)).toEqual([
      "magnets.gap up",
      "magnets.gap down",
      "latch.slotWidth up",
      "latch.slotWidth down",
    ]);
    // A wider slot shortens the hold until the wind opens the flap past the play, or the range ends.
    const wider = found.binding.find(({ key, direction }) => key === "latch.slotWidth" && direction === "up");
    expect(["findings", "range", "no door", "longer hold"]).toContain(wider?.stops);
  }, 240_000);

  test("the found place is what the review of that door says", () => {
    const found = best(["latch.slotWidth=10 mm..18 mm:2"]);
    const slot = found.inputs[0].value;
    const data = { ...GOOD, latch: { ...GOOD.latch, slotWidth: `${slot} m` } };
    const { door } = opened(data);
    const computed = view().compute(door, null);
    expect(computed.holdRequired).toBeCloseTo(found.hold as number, 9);
    const fails = view()
      .concerns.filter(({ id }) => !/^(hold|timer)\./.test(id))
      .filter(({ judge }) => judge(computed)?.status === "fail");
    expect(fails).toEqual([]);
  });

  test("the same search gives the same bits, and stops when no more is asked", () => {
    expect(best(["magnets.gap=3 mm..8 mm:2"], { places: 8, starts: 1 })).toEqual(
      best(["magnets.gap=3 mm..8 mm:2"], { places: 8, starts: 1 }),
    );
    const search = searchBest(good.file, good.door, { over: [axis("magnets.gap=3 mm..8 mm:2")] }, view());
    expect(search.next().value).toMatchObject({ tried: 1 });
    expect(search.return(null as never).done).toBe(true);
  });
});

describe("honesty", () => {
  test("where nothing keeps every finding, the nearest place and what bars it", () => {
    const weak = { ...GOOD, supply: { ...GOOD.supply, voltage: "6 V" } };
    const found = best(["magnets.gap=3 mm..8 mm:2"], { places: 8, starts: 2 }, weak);
    expect(found.kept).toBe(false);
    expect(found.bars).toContain("coil.pull-in");
  });

  test("keeping cautions is never better than letting them be", () => {
    const over = ["latch.slotWidth=10 mm..18 mm:2"];
    const strict = best(over, { keepCautions: true });
    expect(strict.hold as number).toBeGreaterThanOrEqual((best(over).hold as number) * (1 - 1e-9));
    expect(strict.newCautions).toEqual([]);
  });

  test("how many of the starts agree is told", () => {
    const found = best(["magnets.gap=3 mm..8 mm:2"], { starts: 3 });
    expect(found.starts).toBe(3);
    expect(found.agreeing).toBeGreaterThanOrEqual(1);
    expect(found.agreeing).toBeLessThanOrEqual(3);
  });
});

test("requests that make no search", () => {
  const errors = (over: BestRequest["over"]) => {
    const found = findBest(good.file, good.door, { over }, view());
    return found.ok ? "" : found.errors.map(({ message }) => message).join(" ");
  };
  expect(errors([])).toContain("from 1 to 6");
  const gap = axis("magnets.gap=3 mm..8 mm:2");
  expect(errors([gap, gap])).toContain("different inputs");
  expect(errors([{ key: "magnets.gape", from: 1, to: 2, count: 2 }])).toContain("magnets.gap");
});

describe("what is said of it", () => {
  test("a sentence for the result, its trust and every input both ways; edits that read as the door found", () => {
    const found = best(["latch.slotWidth=10 mm..18 mm:2"]);
    const says = bestSays(found, "metric");
    expect(says[0]).toMatch(
      /^The least hold found is [\d.]+ s \([\d.]+ s as the door stands\), at latch\.slotWidth [\d.]+ mm\.$/,
    );
    expect(says[1]).toMatch(/not ruled out\.$/);
    expect(says.filter((sentence) => sentence.startsWith("latch.slotWidth "))).toHaveLength(2);
    const [{ path, text }] = bestEdits(found, "metric");
    const edited = opened({ ...GOOD, latch: { ...GOOD.latch, slotWidth: text } });
    expect(path).toBe("latch.slotWidth");
    expect(edited.door.latch?.slotWidth).toBeCloseTo(found.inputs[0].value, 5);
    expect(bestSays(found, "inch").join(" ")).toContain(" in");
  });

  test("nothing found is said as such", () => {
    const weak = { ...GOOD, supply: { ...GOOD.supply, voltage: "6 V" } };
    const [first] = bestSays(best(["magnets.gap=3 mm..8 mm:2"], { places: 6, starts: 1 }, weak), "metric");
    expect(first).toMatch(/^No place in these ranges keeps every finding\. .*coil\.pull-in/);
  });
});
