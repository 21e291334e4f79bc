import { expect, test } from "vitest";
import { latchDimensions } from "../../../../renderer/three/layout/dimensions.ts";
import { type CutFace, cutFaces, plateBoxes } from "../../../../renderer/three/layout/section.ts";
import { doorNamed, given, layoutOf } from "../doors.ts";

const door = doorNamed("03-jamb-one.door.json");
const layout = layoutOf(door);

function extent(faces: readonly CutFace[], stuff: string): { y: [number, number]; z: [number, number] } {
  const points = faces.filter((face) => face.stuff === stuff).flatMap(({ outline }) => outline);
  const ys = points.map(([y]) => y);
  const zs = points.map(([, z]) => z);
  return { y: [Math.min(...ys), Math.max(...ys)], z: [Math.min(...zs), Math.max(...zs)] };
}

test("a cut through the latch shows the flap as thick as it is, and the bolt as wide and withdrawn", () => {
  const { flap, bolt } = cutFaces(layout, 0);
  const plate = extent(flap, "flap");
  expect(plate.z[1] - plate.z[0]).toBeCloseTo(door.flap.thickness, 12);
  const brass = extent(bolt, "brass");
  expect(brass.y[1]).toBeCloseTo(layout.latch?.bolt.tip ?? Number.NaN, 12);
  const tip = bolt.find(({ outline }) => outline.some(([y]) => y === brass.y[1]));
  const zs = tip?.outline.map(([, z]) => z) ?? [];
  expect(Math.max(...zs) - Math.min(...zs)).toBeCloseTo(door.latch?.boltWidth ?? Number.NaN, 12);
});

test("beside the opening the wall is cut whole, in the opening it is not there", () => {
  const beside = extent(cutFaces(layout, layout.wall.bounds.max[0] * 0.95).fixed, "core");
  expect(beside.y[1]).toBeCloseTo(layout.wall.bounds.max[1], 12);
  const through = cutFaces(layout, layout.opening.halfWidth * 0.5).fixed.filter(
    ({ stuff }) => stuff === "plaster",
  );
  const inOpening = through.some(({ outline }) => {
    const ys = outline.map(([y]) => y);
    const middle = (layout.opening.bottom + layout.opening.top) / 2;
    return Math.min(...ys) < middle && Math.max(...ys) > middle;
  });
  expect(through.length).toBeGreaterThan(0);
  expect(inOpening).toBe(false);
});

test("the cut plate and its notch make up the plate", () => {
  const { plate } = layout;
  const area = plateBoxes(plate).reduce(
    (sum, { min, max }) => sum + (max[0] - min[0]) * (max[1] - min[1]),
    0,
  );
  const notch = plate.notch;
  expect(notch).not.toBeNull();
  if (notch === null) return;
  const cut = 2 * notch.halfWidth * (notch.top - plate.bottom);
  expect(area + cut).toBeCloseTo(door.flap.width * door.flap.height, 12);
});

test("dimension lines are as long as what they say, on both parts, pointing up and down", () => {
  for (const name of ["03-jamb-one.door.json", "18-bolt-down.door.json"]) {
    const { latch } = doorNamed(name);
    const placed = layoutOf(doorNamed(name)).latch;
    if (latch === null || placed === null) throw new Error("these doors have latches");
    const { strike, bolt } = latchDimensions(latch, placed);
    const said = Object.fromEntries([...strike, ...bolt].map((one) => [one.name, one.value]));
    expect(said).toEqual({
      engagement: latch.engagement,
      slot: latch.slotWidth,
      play: (latch.slotWidth - latch.boltWidth) / 2,
      "tip gap": latch.tipGap,
      bolt: latch.boltWidth,
    });
    for (const { from, to, value } of [...strike, ...bolt]) {
      expect(Math.hypot(from[0] - to[0], from[1] - to[1])).toBeCloseTo(value, 12);
    }
  }
});

test("an offset slot has its offset written down", () => {
  const offset = 0.002 as NonNullable<typeof door.latch>["offset"];
  if (door.latch === null) throw new Error("the door has a latch");
  const latch = { ...door.latch, offset };
  const placed = layoutOf({ ...door, latch }).latch;
  if (placed === null) throw new Error("the door has a latch");
  const line = latchDimensions(latch, placed).bolt.find(({ name }) => name === "offset");
  expect(line?.value).toBe(0.002);
  expect([line?.from[1], line?.to[1]]).toEqual([0, 0.002]);
});

test("the hinge is cut at its height", () => {
  const pin = cutFaces(layout, 0).fixed.filter(({ layer, stuff }) => stuff === "steel" && layer === 6);
  const ys = pin.flatMap(({ outline }) => outline.map(([y]) => y));
  const round = ys.filter((y) => Math.abs(y - given(door).hingeHeight) < 0.01);
  expect((Math.min(...round) + Math.max(...round)) / 2).toBeCloseTo(given(door).hingeHeight, 9);
});
