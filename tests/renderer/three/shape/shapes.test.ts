import fc from "fast-check";
import { type BufferGeometry, CylinderGeometry, Vector3 } from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import { describe, expect, test } from "vitest";
import { type Box, box, rod } from "../../../../renderer/three/layout/solids.ts";
import { animalBody } from "../../../../renderer/three/motion/animal-body.ts";
import { bodyGeometry } from "../../../../renderer/three/shape/animal-shapes.ts";
import { boxesGeometry, TRIANGLES_PER_BOX } from "../../../../renderer/three/shape/chamfered.ts";
import { cutGeometry } from "../../../../renderer/three/shape/cut-faces.ts";
import { layersGeometry } from "../../../../renderer/three/shape/layers.ts";
import { loftGeometry, taperedGeometry } from "../../../../renderer/three/shape/loft.ts";
import { plateGeometry } from "../../../../renderer/three/shape/plate.ts";
import { rodsGeometry } from "../../../../renderer/three/shape/rods.ts";
import { scattered } from "../../../../renderer/three/shape/scattered.ts";
import { onArc, scaleTicks, sectorGeometry } from "../../../../renderer/three/shape/sector.ts";
import { DOORS, doorNamed, layoutOf } from "../doors.ts";

/** Volume enclosed, by the divergence theorem; negative if the skin is inside out. */
function volume(geometry: BufferGeometry): number {
  const plain = geometry.index === null ? geometry : geometry.toNonIndexed();
  const { position } = plain.attributes;
  const [a, b, c] = [new Vector3(), new Vector3(), new Vector3()];
  let sum = 0;
  for (let i = 0; i < position.count; i += 3) {
    a.fromBufferAttribute(position, i);
    b.fromBufferAttribute(position, i + 1);
    c.fromBufferAttribute(position, i + 2);
    sum += a.dot(b.cross(c)) / 6;
  }
  return sum;
}

/** An edge of 45° chamfer c takes c²/2 per length; at a corner the three meet. Exact for the convex hull of the 24 points. */
function chamferedVolume([x, y, z]: number[], c: number): number {
  return x * y * z - 2 * c * c * (x + y + z) + (16 / 3) * c ** 3;
}

describe("chamfered boxes", () => {
  test("enclose the box less its broken edges, skin outwards, wherever they stand", () => {
    const length = fc.double({ min: 0.05, max: 2, noNaN: true });
    const place = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(length, length, length), fc.tuple(place, place, place), ([x, y, z], [a, b, c]) => {
        const one: Box = box([a, a + x], [b, b + y], [c, c + z]);
        expect(volume(boxesGeometry([one], 0.005))).toBeCloseTo(chamferedVolume([x, y, z], 0.005), 5);
      }),
      { numRuns: 50 },
    );
  });

  test("have a bounded number of triangles, and none of no size where nothing is broken", () => {
    const unit = box([0, 1], [0, 1], [0, 1]);
    expect(boxesGeometry([unit, unit], 0.01).attributes.position.count).toBe(2 * 3 * TRIANGLES_PER_BOX);
    expect(boxesGeometry([unit], 0).attributes.position.count).toBe(36);
    expect(volume(boxesGeometry([unit], 0))).toBeCloseTo(1, 6);
  });

  test("carry metres along the grain as texture", () => {
    const { uv, position, normal } = boxesGeometry(
      [{ ...box([0, 1], [0, 2], [0, 3]), grain: "y" }],
      0,
    ).attributes;
    for (let i = 0; i < position.count; i++) {
      if (Math.abs(normal.getY(i)) < 0.5) expect(uv.getX(i)).toBeCloseTo(position.getY(i), 6);
    }
  });
});

test("a rod along any axis has its length there", () => {
  for (const axis of ["x", "y", "z"] as const) {
    const geometry = rodsGeometry([rod(axis, [1, 2, 3], 0.1, 2)]);
    geometry.computeBoundingBox();
    const size = geometry.boundingBox?.getSize(new Vector3());
    expect(size?.[axis]).toBeCloseTo(2, 6);
    expect(geometry.boundingBox?.getCenter(new Vector3()).distanceTo(new Vector3(1, 2, 3))).toBeLessThan(
      1e-6,
    );
  }
});

test("the plate has the volume of width, height and thickness less its notch", () => {
  const door = doorNamed("03-jamb-one.door.json");
  const { plate } = layoutOf(door);
  const notch = plate.notch === null ? 0 : 2 * plate.notch.halfWidth * (plate.notch.top - plate.bottom);
  const whole = (door.flap.width * door.flap.height - notch) * door.flap.thickness;
  const made = volume(plateGeometry(plate));
  expect(made / whole).toBeGreaterThan(0.985);
  expect(made / whole).toBeLessThanOrEqual(1.0001);
});

test.each([...DOORS])("the wall of %s is its layers less opening and pocket", (_name, door) => {
  const { wall } = layoutOf(door);
  for (const layers of [wall.plaster, wall.core, wall.cladding]) {
    const area = ({ x, y }: { x: readonly [number, number]; y: readonly [number, number] }) =>
      (x[1] - x[0]) * (y[1] - y[0]);
    const solid = layers.reduce(
      (sum, { face, hole, pocket, z }) =>
        sum + (area(face) - area(hole) - (pocket === null ? 0 : area(pocket))) * (z[1] - z[0]),
      0,
    );
    expect(volume(layersGeometry(layers))).toBeCloseTo(solid, 6);
  }
});

test("a loft through equal circles has nearly the volume of the cylinder, a tapered limb that of its parts", () => {
  const ring = (z: number, r: number) => ({ z, y: 0, halfWidth: r, halfHeight: r });
  const pipe = loftGeometry([ring(0, 0), ring(0, 1), ring(2, 1), ring(2, 0)], 64);
  expect(volume(pipe)).toBeCloseTo(2 * Math.PI, 1);
  const limb = taperedGeometry(1, 0.2, 0.1);
  const exact = (Math.PI / 3) * (0.04 + 0.02 + 0.01) + (2 / 3) * Math.PI * (0.008 + 0.001);
  expect(volume(limb) / exact).toBeGreaterThan(0.94);
  expect(volume(limb) / exact).toBeLessThan(1.01);
});

test.each([...DOORS])(
  "the animal of %s is no higher than its shoulder nor longer than its body and tail",
  (_name, door) => {
    for (const animal of door.animals) {
      const geometry = bodyGeometry(animalBody(animal));
      geometry.computeBoundingBox();
      const bounds = geometry.boundingBox;
      expect(bounds?.max.y).toBeLessThanOrEqual(animal.shoulderHeight * 1.005);
      expect(bounds?.max.z).toBeLessThanOrEqual(animal.bodyLength * 0.05);
      expect((bounds?.max.x ?? 0) - (bounds?.min.x ?? 0)).toBeLessThanOrEqual(animal.chestWidth * 1.02);
    }
  },
);

test("cut faces lie just inside the kept half, higher layers in front", () => {
  const face = (layer: number) =>
    ({
      stuff: "steel",
      layer,
      outline: [
        [0, 0],
        [1, 0],
        [1, 1],
      ],
    }) as const;
  const at = (layer: number) => cutGeometry([face(layer)], 0.5).attributes.position.getX(0);
  expect(at(1)).toBeGreaterThan(0.5);
  expect(at(7)).toBeGreaterThan(0.5);
  expect(at(7)).toBeLessThan(at(1));
});

describe("the protractor", () => {
  test("zero hangs down and positive is outdoors", () => {
    expect(onArc(2, 0)).toEqual([-2, 0]);
    const [y, z] = onArc(2, Math.PI / 6);
    expect(y).toBeCloseTo(-Math.sqrt(3), 12);
    expect(z).toBeCloseTo(1, 12);
  });

  test("has a tick every 10° up to the stop, named every 30°, the same on both sides", () => {
    const ticks = scaleTicks((100 * Math.PI) / 180, 1);
    expect(ticks).toHaveLength(21);
    expect(
      ticks.filter(({ named }) => named).map(({ angle }) => Math.round((angle * 180) / Math.PI)),
    ).toEqual([-90, -60, -30, 0, 30, 60, 90]);
  });

  test("a sector has the area of its part of a ring", () => {
    const { position } = sectorGeometry(1, 2, -0.5, 0.5).attributes;
    let area = 0;
    for (let i = 0; i < position.count; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => new Vector3().fromBufferAttribute(position, i + k));
      area += b.sub(a).cross(c.sub(a)).length() / 2;
    }
    expect(area).toBeCloseTo((4 - 1) / 2, 2);
  });
});

test("copies of a shape are what three's own merging makes of moved clones; of none, nothing", () => {
  const places = [
    [0.1, -0.2, 0],
    [-0.1, 0.3, 0.05],
    [0, 0, 0],
  ] as const;
  const shape = new CylinderGeometry(0.005, 0.005, 0.0025, 28);
  const made = scattered(shape, places);
  const merged = mergeGeometries(places.map(([x, y, z]) => shape.clone().translate(x, y, z)));
  for (const name of ["position", "normal", "uv"] as const)
    expect(made.attributes[name].array).toEqual(merged.attributes[name].array);
  expect([...(made.index?.array ?? [])]).toEqual([...(merged.index?.array ?? [])]);
  expect(volume(made)).toBeCloseTo(3 * volume(shape), 12);
  expect(scattered(shape, []).attributes.position).toBeUndefined();
});
