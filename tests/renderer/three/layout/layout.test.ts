import { describe, expect, test } from "vitest";
import { magnetRows } from "../../../../core/parts/magnets.ts";
import { sharing } from "../../../../renderer/state/share.ts";
import { latchPlace } from "../../../../renderer/three/layout/section.ts";
import { DOORS, doorNamed, given, layoutOf } from "../doors.ts";

const all = [...DOORS];

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (value === null || typeof value !== "object") return [];
  return Object.values(value).flatMap(numbersIn);
}

describe.each(all)("%s", (_name, door) => {
  const layout = layoutOf(door);
  const { hingeHeight, reach } = given(door);

  test("every place is a number", () => {
    const numbers = numbersIn(layout);
    expect(numbers.length).toBeGreaterThan(100);
    expect(numbers.every(Number.isFinite)).toBe(true);
  });

  test("the flap hangs from the hinge axis and clears the sill by the stated clearance", () => {
    expect(layout.hinge.pin.centre).toEqual([0, hingeHeight, 0]);
    expect(layout.plate.top).toBeCloseTo(-door.flap.hingeOffset, 12);
    expect(layout.plate.bottom).toBeCloseTo(-reach, 12);
    const edge = hingeHeight + layout.plate.bottom;
    expect(edge - layout.frame.sill.max[1]).toBeCloseTo(door.flap.bottomClearance, 12);
    expect(layout.frame.sill.max[1]).toBeCloseTo(door.opening.sillHeight, 12);
  });

  test("the clear opening is as wide as stated, and no lower than stated", () => {
    const [left, right] = layout.frame.boards;
    expect(right.min[0] - left.max[0]).toBeCloseTo(door.opening.width, 12);
    expect(layout.opening.top - layout.opening.bottom).toBeGreaterThanOrEqual(door.opening.height - 1e-12);
    expect(layout.opening.top).toBeGreaterThan(hingeHeight);
  });

  test("the withdrawn tip is the tip gap short of the slot's mouth, which is at the latch's distance", () => {
    const { latch } = door;
    if (latch === null || layout.latch === null) return expect(layout.latch).toBe(latch);
    const { mouth, tip } = latchPlace(layout, layout.latch);
    expect(hingeHeight - mouth).toBeCloseTo(latch.distanceFromHinge, 12);
    expect((mouth - tip) * layout.latch.bolt.direction).toBeCloseTo(latch.tipGap, 12);
    expect(layout.latch.bolt.direction).toBe(latch.boltPoints === "up" ? 1 : -1);
  });

  test("the slot is as wide as stated, the strike as wide as the edge, and bolt and slot are the offset apart", () => {
    const { latch } = door;
    if (latch === null || layout.latch === null) return;
    const [far, near] = layout.latch.strike;
    expect(far.min[2] - near.max[2]).toBeCloseTo(latch.slotWidth, 12);
    expect(far.max[2] - near.min[2]).toBeCloseTo(2 * latch.edgeHalfWidth, 12);
    const fixedPart = layout.latch.boltOn === "frame" ? layout.latch.bolt.z : layout.latch.strikeZ;
    const swingingPart = layout.latch.boltOn === "frame" ? layout.latch.strikeZ : layout.latch.bolt.z;
    expect(fixedPart).toBe(latch.offset);
    expect(swingingPart).toBe(0);
    expect(2 * layout.latch.bolt.radius).toBeCloseTo(latch.boltWidth, 12);
  });

  test("a withdrawn bolt is out of the flap's way: it and the strike meet nothing of the other's frame", () => {
    const placed = layout.latch;
    if (placed === null || placed.boltOn !== "frame") return;
    const guideTop = placed.bolt.guide.centre[1] + placed.bolt.guide.length / 2;
    const strikeBottom = hingeHeight + Math.min(...placed.strike.map(({ min }) => min[1]));
    expect(guideTop).toBeLessThan(strikeBottom);
    if (placed.notch === null || placed.notch.top <= layout.plate.bottom) return;
    expect(placed.bolt.guide.radius).toBeLessThanOrEqual(placed.notch.halfWidth);
  });

  test("there are as many magnets as stated, in facing pairs a gap apart, at their distances", () => {
    const { magnets } = door;
    if (magnets === null || layout.magnets === null) return expect(layout.magnets).toBe(magnets);
    const { onFlap, onFrame } = layout.magnets;
    expect(onFlap).toHaveLength(magnetRows(magnets).length * magnets.sides);
    expect(onFrame).toHaveLength(onFlap.length);
    for (const [i, disc] of onFlap.entries()) {
      const other = onFrame[i];
      const along = disc.axis === "x" ? 0 : 1;
      const toWorld = along === 1 ? hingeHeight : 0;
      const between = other.centre[along] - (disc.centre[along] + toWorld);
      expect(between * disc.towards - magnets.thickness).toBeCloseTo(magnets.gap, 12);
      expect(other.towards).toBe(-disc.towards);
      expect(disc.pole === other.pole).toBe(magnets.force === "repel");
      if (disc.axis === "x") expect(other.centre[1] - hingeHeight).toBeCloseTo(disc.centre[1], 12);
    }
  });
});

test("jamb magnets sit at their rows; alternating ones show the other pole in every second", () => {
  const door = doorNamed("05-jamb-three-alternating.door.json");
  const discs = layoutOf(door).magnets?.onFlap.filter(({ towards }) => towards === 1) ?? [];
  expect(discs.map(({ centre }) => -centre[1])).toEqual([0.27, 0.27 - 0.016, 0.27 - 2 * 0.016]);
  expect(discs.map(({ pole }) => pole)).toEqual(["N", "S", "N"]);
});

test("a sill magnet's lower face is at its distance, its partner in the sill below", () => {
  const door = doorNamed("07-sill-attract.door.json");
  const layout = layoutOf(door);
  const [disc] = layout.magnets?.onFlap ?? [];
  expect(disc.centre[1] - disc.thickness / 2).toBeCloseTo(-(door.magnets?.distanceFromHinge ?? 0), 12);
});

test("a weight has its mass in steel and its centre at its distance", () => {
  const found = [...DOORS.values()].find(({ flap }) => flap.extraMasses.length > 0);
  expect(found).toBeDefined();
  if (found === undefined) return;
  const [weight] = found.flap.extraMasses;
  const [bar] = layoutOf(found).weights;
  const [w, h, d] = bar.max.map((top, i) => top - bar.min[i]);
  expect(w * h * d * 7850).toBeCloseTo(weight.mass, 9);
  expect(-(bar.min[1] + bar.max[1]) / 2).toBeCloseTo(weight.distanceFromHinge, 12);
});

test("a layout is the same again where nothing seen is different, and else in every part that the change is not about", () => {
  const door = doorNamed("03-jamb-one.door.json");
  const before = layoutOf(door);
  const renamed = {
    ...door,
    name: "another",
    hinge: { ...door.hinge, staticRatio: 2 as typeof door.hinge.staticRatio },
  };
  expect(sharing(before, layoutOf(renamed))).toBe(before);

  const { magnets } = door;
  if (magnets === null) throw new Error("the door has no magnets");
  const thicker = {
    ...door,
    magnets: { ...magnets, thickness: (magnets.thickness * 1.1) as typeof magnets.thickness },
  };
  const after = sharing(before, layoutOf(thicker));
  expect(after.magnets).not.toBe(before.magnets);
  for (const part of ["wall", "frame", "hinge", "plate", "weights", "latch", "seal"] as const)
    expect(after[part]).toBe(before[part]);
});
