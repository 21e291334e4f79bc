/** Where everything sits, against the file's own numbers and against the physics of two bar magnets. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { magnetRows } from "../../../core/parts/magnets.ts";
import { compute } from "../../../core/review/compute.ts";
import { type DoorPlan, doorPlan, type Pocket } from "../../../core/sheet/door-plan.ts";
import { type DoorJson, doorOf, EXAMPLES, exampleJson } from "../doors.ts";
import { variant } from "./sample.ts";

const planOf = (json: unknown): DoorPlan => doorPlan(doorOf(json));

/** Facing pairs: flap's and frame's pocket of one number. */
function pairs(plan: DoorPlan): [Pocket, Pocket][] {
  const flap = plan.pockets.filter(({ on }) => on === "flap");
  return flap.map((one) => {
    const other = plan.pockets.find(({ on, pair }) => on === "frame" && pair === one.pair);
    if (other === undefined) throw new Error(`pair ${one.pair} has one magnet`);
    return [one, other];
  });
}

/** A magnet's two poles as point charges: its working face with the pole that shows, its back with the other. */
function charges({ x, y, looks, thickness, shows }: Pocket) {
  const sign = shows === "N" ? 1 : -1;
  return [
    { x, y, q: sign },
    { x: x - looks[0] * thickness, y: y - looks[1] * thickness, q: -sign },
  ];
}

/** Coulomb's law between all poles: the force on `a` towards `b`, positive attracting. */
function pull(a: Pocket, b: Pocket): number {
  let sum = 0;
  for (const p of charges(a)) {
    for (const q of charges(b)) {
      const [dx, dy] = [q.x - p.x, q.y - p.y];
      const r = Math.hypot(dx, dy);
      sum += (-p.q * q.q * (dx * a.looks[0] + dy * a.looks[1])) / r ** 3;
    }
  }
  return sum;
}

const magnetChoices = fc.record({
  arrangement: fc.constantFrom("jamb", "sill"),
  force: fc.constantFrom("attract", "repel"),
  polarity: fc.constantFrom("like", "alternating"),
  sides: fc.constantFrom(1, 2),
  rows: fc.integer({ min: 1, max: 4 }),
  gapMm: fc.integer({ min: 1, max: 14 }),
});

function withMagnets(choice: {
  arrangement: string;
  force: string;
  polarity: string;
  sides: number;
  rows: number;
  gapMm: number;
}): DoorJson {
  const { rows, gapMm, ...rest } = choice;
  const sill = choice.arrangement === "sill";
  return variant({
    magnets: {
      ...rest,
      perSide: sill ? 1 : rows,
      pitch: "20 mm",
      gap: `${gapMm} mm`,
      distanceFromHinge: sill ? "37.6 cm" : "35 cm",
    },
  });
}

describe("magnets", () => {
  test("facing faces attract where the file says so and repel where it says that, in every arrangement", () => {
    fc.assert(
      fc.property(magnetChoices, (choice) => {
        const plan = planOf(withMagnets(choice));
        for (const [flap, frame] of pairs(plan)) {
          expect(Math.sign(pull(flap, frame))).toBe(choice.force === "attract" ? 1 : -1);
          expect(Math.sign(pull(frame, flap))).toBe(choice.force === "attract" ? 1 : -1);
        }
      }),
    );
  });

  test.each(["attract", "repel"])("the poles drawn pull the way the computed pair does: %s", (force) => {
    const door = doorOf(variant({ magnets: { force } }));
    const [[flap, frame]] = pairs(doorPlan(door));
    const axial = compute(door).centring?.figures.axialForce ?? Number.NaN;
    expect(Math.sign(pull(flap, frame))).toBe(Math.sign(axial));
  });

  test("alternating rows: a flap magnet and the jamb's one row on have the sign the energy has, p (−1)^(i+j)", () => {
    const plan = planOf(variant({ magnets: { perSide: 4, pitch: "20 mm", polarity: "alternating" } }));
    const right = (on: string) => plan.pockets.filter((p) => p.on === on && p.face.startsWith("right"));
    const sign = (pocket: Pocket) => (pocket.shows === "N" ? 1 : -1);
    right("flap").forEach((flap, i) => {
      right("frame").forEach((frame, j) => {
        expect(-sign(flap) * sign(frame)).toBe((-1) ** (i + j));
      });
    });
  });

  test("left and right are mirror images", () => {
    const plan = planOf(variant({ magnets: { perSide: 3, polarity: "alternating" } }));
    const side = (name: string) => plan.pockets.filter(({ face }) => face.startsWith(name));
    const mirrored = side("left").map(({ x, looks, y, shows, on }) => [-x, -looks[0], y, shows, on]);
    expect(mirrored).toEqual(side("right").map(({ x, looks, y, shows, on }) => [x, looks[0], y, shows, on]));
  });

  test("faces are the file's gap apart, at the file's distances from the hinge", () => {
    fc.assert(
      fc.property(magnetChoices, (choice) => {
        const door = doorOf(withMagnets(choice));
        const plan = doorPlan(door);
        const { magnets } = door;
        if (magnets === null) throw new Error("no magnets");
        for (const [flap, frame] of pairs(plan)) {
          expect(Math.hypot(frame.x - flap.x, frame.y - flap.y)).toBeCloseTo(choice.gapMm, 9);
          expect([frame.x - flap.x, frame.y - flap.y].map(Math.sign)).toEqual(flap.looks.map(Math.sign));
        }
        const rows = new Set(plan.pockets.filter(({ on }) => on === "flap").map(({ y }) => y.toFixed(6)));
        expect([...rows].sort()).toEqual(
          magnetRows(magnets)
            .map((r) => (1000 * r).toFixed(6))
            .sort(),
        );
        expect(plan.pockets.length).toBe(2 * magnets.sides * magnets.perSide);
      }),
    );
  });

  test("a pocket is as deep as its magnet and what it lies below the surface", () => {
    const plan = planOf(exampleJson("medium-dog"));
    // 6 mm between faces, 5 mm of room: half a millimetre each.
    for (const { recess, depth } of plan.pockets) {
      expect(recess).toBeCloseTo(0.5, 9);
      expect(depth).toBeCloseTo(4.5, 9);
    }
    const cat = planOf(exampleJson("cat"));
    for (const { recess, depth } of cat.pockets) {
      expect(recess).toBeCloseTo(0, 9);
      expect(depth).toBeCloseTo(3, 9);
    }
  });

  test("cheeks hold every pocket with a wall around it; a thick flap has none", () => {
    for (const name of EXAMPLES) {
      const plan = planOf(exampleJson(name));
      for (const pocket of plan.pockets.filter(({ on }) => on === "flap")) {
        const along = pocket.looks[0] === 0 ? pocket.x : pocket.y;
        const cheek = plan.cheeks.find(({ left, right, top, bottom }) => {
          const [low, high] = pocket.looks[0] === 0 ? [left, right] : [top, bottom];
          const beside = pocket.looks[0] === 0 || pocket.x * (left + right) > 0;
          return beside && along - pocket.diameter / 2 >= low + 1.99 && along <= high;
        });
        expect(cheek).toBeDefined();
        if (cheek === undefined) continue;
        expect(2 * cheek.thickness + plan.flap.thickness).toBeGreaterThanOrEqual(pocket.diameter + 4);
        const deep = pocket.looks[0] === 0 ? cheek.bottom - cheek.top : cheek.right - cheek.left;
        expect(deep).toBeGreaterThanOrEqual(pocket.depth + 1.99);
      }
    }
    expect(planOf(variant({ flap: { thickness: "12 mm" } })).cheeks).toEqual([]);
  });
});

describe("latch", () => {
  test("up: mouth, tip and depths are the file's", () => {
    const { bolt, strike } = planOf(exampleJson("medium-dog"));
    expect(bolt).toMatchObject({ on: "frame", points: 1, width: 8, stroke: 8 });
    expect([bolt?.mouth, bolt?.withdrawn, bolt?.engaged, bolt?.extended]).toEqual([375, 378, 371, 370]);
    expect(strike).toMatchObject({ on: "flap", slotWidth: 16, halfThickness: 12, mouth: 375, inFlap: false });
  });

  test("down: the bolt hangs on the flap and the same lengths run the other way", () => {
    const { bolt, strike } = planOf(variant({ latch: { boltPoints: "down" } }));
    expect(bolt).toMatchObject({ on: "flap", points: -1 });
    expect([bolt?.withdrawn, bolt?.engaged, bolt?.extended]).toEqual([372, 379, 380]);
    expect(strike).toMatchObject({ on: "frame", mouth: 375 });
  });

  test("the extended tip never reaches the slot's bottom", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 0, max: 5 }), (engagement, gap) => {
        const stroke = engagement + gap + 1;
        const plan = planOf(
          variant({
            latch: { engagement: `${engagement} mm`, tipGap: `${gap} mm` },
            solenoid: {
              stroke: `${stroke} mm`,
              pull: [
                ["0 mm", "9 N"],
                [`${stroke + 1} mm`, "3 N"],
              ],
            },
          }),
        );
        const { bolt, strike } = plan;
        const reach = (bolt?.mouth ?? 0) - (bolt?.extended ?? 0);
        expect(strike?.slotDepth ?? 0).toBeGreaterThanOrEqual(reach + 0.99);
      }),
    );
  });

  test("a flap as thick as the strike carries the slot itself", () => {
    const plan = planOf(variant({ flap: { thickness: "24 mm" }, latch: { distanceFromHinge: "37.8 cm" } }));
    expect(plan.strike?.inFlap).toBe(true);
    expect(plan.notch).toBeNull();
  });

  test("the frame: hinge axis, sill and floor are where the file puts them", () => {
    const { opening, flap } = planOf(exampleJson("medium-dog"));
    expect([flap.top, flap.bottom, opening.sill, opening.top, opening.floor]).toEqual([8, 378, 383, 3, 503]);
  });
});
