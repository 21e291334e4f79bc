import { Object3D, PerspectiveCamera, Sprite, Vector3 } from "three";
import { describe, expect, test } from "vitest";
import type { Replay } from "../../../../core/passage/replay.ts";
import { animalBody } from "../../../../renderer/three/motion/animal-body.ts";
import { newGait } from "../../../../renderer/three/motion/gait.ts";
import { animalPresence } from "../../../../renderer/three/motion/pose.ts";
import { type BoltRig, createRig, poseRig, sizeLabels } from "../../../../renderer/three/motion/rig.ts";
import { doorNamed } from "../doors.ts";

function still(angle: number, bolt: number, coil: 0 | 1, nose: number, direction: 1 | -1): Replay {
  return {
    interval: 1,
    time: Float64Array.of(0),
    angle: Float64Array.of(angle),
    speed: Float64Array.of(0),
    bolt: Float64Array.of(bolt),
    coil: Uint8Array.of(coil),
    nose: Float64Array.of(nose),
    direction,
    marks: {
      arrival: 0,
      unlocked: null,
      letGo: 0,
      holdStarts: null,
      holdEnds: null,
      mouth: null,
      decided: null,
      settled: null,
      rest: null,
    },
    outcome: null,
  };
}

/** Where a point of the flap's lower edge is, 0.3 m from the hinge. */
function edge(flap: Object3D): Vector3 {
  flap.updateMatrixWorld(true);
  return new Vector3(0, -0.3, 0).applyMatrix4(flap.matrixWorld);
}

describe("the flap", () => {
  test.each([0, 0.4, -0.4, 1.2])(
    "at %f rad its edge is at r sin θ outdoors and r cos θ below the hinge",
    (angle) => {
      const rig = createRig();
      const flap = new Object3D();
      rig.flaps.push(flap);
      poseRig(rig, still(angle, 0, 0, 0, 1), null, 0);
      expect(edge(flap).z).toBeCloseTo(0.3 * Math.sin(angle), 12);
      expect(edge(flap).y).toBeCloseTo(-0.3 * Math.cos(angle), 12);
    },
  );

  test("the pinned flap swings by its own film", () => {
    const rig = createRig();
    const [flap, ghost] = [new Object3D(), new Object3D()];
    rig.flaps.push(flap);
    rig.ghosts.push(ghost);
    poseRig(rig, still(0.1, 0, 0, 0, 1), still(0.7, 0, 0, 0, 1), 0);
    expect(edge(flap).z).toBeCloseTo(0.3 * Math.sin(0.1), 12);
    expect(edge(ghost).z).toBeCloseTo(0.3 * Math.sin(0.7), 12);
  });
});

test.each([1, -1] as const)(
  "a bolt that points %i goes that way and its spring fills the room behind it",
  (direction) => {
    const rig = createRig();
    const bolt: BoltRig = { direction, springLength: 0.006, shaft: new Object3D(), spring: new Object3D() };
    rig.bolts.push(bolt);
    poseRig(rig, still(0, 0.003, 0, 0, 1), null, 0);
    expect(bolt.shaft.position.y).toBeCloseTo(direction * 0.003, 12);
    expect(bolt.spring.scale.y * bolt.springLength).toBeCloseTo(0.009, 12);
  },
);

test("lamp and sign follow the coil", () => {
  const rig = createRig();
  const [on, off] = [new Object3D(), new Object3D()];
  rig.coilOn.push(on);
  rig.coilOff.push(off);
  poseRig(rig, still(0, 0, 1, 0, 1), null, 0);
  expect([on.visible, off.visible]).toEqual([true, false]);
  poseRig(rig, still(0, 0, 0, 0, 1), null, 0);
  expect([on.visible, off.visible]).toEqual([false, true]);
});

test("the animal's nose is where the film has it, facing the way it goes, and it fades at the floor's end", () => {
  const body = animalBody(doorNamed("01-plain.door.json").animals[0]);
  const rig = createRig();
  const root = new Object3D();
  const seen: number[] = [];
  const joints = Array.from({ length: 8 }, () => new Object3D());
  rig.animals.push({
    body,
    gait: newGait(body),
    step: { half: 0.07, height: 0.1 },
    floorDepth: 1,
    root,
    joints,
    fade: (presence) => seen.push(presence),
  });
  poseRig(rig, still(0, 0, 0, 0.2, -1), null, 0);
  expect(root.position.z).toBeCloseTo(-0.2, 12);
  expect(root.getWorldDirection(new Vector3()).z).toBeCloseTo(-1, 9);
  expect(seen).toEqual([1]);
  poseRig(rig, still(0, 0, 0, -3, -1), null, 0);
  expect(root.visible).toBe(false);
  expect(animalPresence(-0.9, 0.46, 1)).toBeCloseTo(0.4, 9);
  expect(animalPresence(0.3, 0.46, 1)).toBe(1);
});

test("labels keep their size in pixels whatever the lens", () => {
  const rig = createRig();
  const label = new Sprite();
  label.userData.size = { width: 80, height: 20 };
  rig.labels.push(label);
  for (const fov of [9, 26, 60]) {
    sizeLabels(rig, new PerspectiveCamera(fov, 1.6, 0.1, 10), 500);
    // Without attenuation a sprite of height 1 fills 1/(2 tan(fov/2)) of the picture's height.
    const pixels = (label.scale.y / (2 * Math.tan((fov * Math.PI) / 360))) * 500;
    expect(pixels).toBeCloseTo(20, 9);
    expect(label.scale.x / label.scale.y).toBeCloseTo(4, 9);
  }
});
