import { PerspectiveCamera, Vector3 } from "three";
import { describe, expect, test } from "vitest";
import type { Camera } from "../../../../renderer/state/view.ts";
import { keyTurn, turnCamera } from "../../../../renderer/three/camera/keys.ts";
import { move, placeAlong } from "../../../../renderer/three/camera/path.ts";
import { cutPlace, type Standpoint, standpoint } from "../../../../renderer/three/camera/standpoints.ts";
import { DOORS, doorNamed, layoutOf } from "../doors.ts";

const VIEWS: readonly Camera[] = ["side", "inside", "outside", "latch", "free"];

function cameraAt(point: Standpoint, aspect: number): PerspectiveCamera {
  const camera = new PerspectiveCamera(point.fov, aspect, 0.01, 100);
  camera.position.set(...point.position);
  camera.lookAt(...point.target);
  camera.updateMatrixWorld(true);
  return camera;
}

function inPicture(camera: PerspectiveCamera, place: Vector3): boolean {
  const seen = place.clone().project(camera);
  return Math.abs(seen.x) <= 1 && Math.abs(seen.y) <= 1 && Math.abs(seen.z) <= 1;
}

describe.each([...DOORS])("%s", (_name, door) => {
  const layout = layoutOf(door);
  test.each(VIEWS)(
    "from %s the whole closed flap (or the latch) is in the picture, wide, square and tall",
    (view) => {
      for (const aspect of [2.2, 1, 0.6]) {
        const camera = cameraAt(standpoint(view, false, layout, aspect, 1), aspect);
        const half = layout.plate.halfWidth;
        const corners =
          view === "latch" && layout.latch !== null
            ? [[0, layout.hingeHeight * (layout.latch.boltOn === "frame" ? 1 : 0) + layout.latch.mouth]]
            : [
                [half, layout.hingeHeight],
                [-half, layout.hingeHeight],
                [half, layout.opening.bottom],
                [-half, layout.opening.bottom],
              ];
        for (const [x, y] of corners) {
          const flat = view === "side" ? 0 : x;
          expect(inPicture(camera, new Vector3(flat, y, 0))).toBe(true);
        }
      }
    },
  );
});

const layout = layoutOf(doorNamed("03-jamb-one.door.json"));

test("inside looks from indoors, outside from outdoors, side along the hinge with outdoors on the right", () => {
  expect(standpoint("inside", false, layout, 1.6, 1).position[2]).toBeLessThan(-0.3);
  expect(standpoint("outside", false, layout, 1.6, 1).position[2]).toBeGreaterThan(0.3);
  const side = cameraAt(standpoint("side", false, layout, 1.6, 1), 1.6);
  expect(new Vector3(0, layout.hingeHeight, 0.1).project(side).x).toBeGreaterThan(0.02);
});

test("the side view cuts just beside the flap, a section at the latch, others nowhere", () => {
  expect(cutPlace("side", false, layout)).toBeCloseTo(-layout.plate.halfWidth, 2);
  expect(cutPlace("side", true, layout)).toBe(0);
  expect(cutPlace("latch", true, layout)).toBe(0);
  expect(cutPlace("inside", false, layout)).toBeNull();
});

test("a move starts where it is, ends where it goes, and goes around the door, not through it", () => {
  const from = standpoint("inside", false, layout, 1.6, 1);
  const to = standpoint("outside", false, layout, 1.6, 1);
  const way = move(from, to);
  const camera = new PerspectiveCamera();
  const target = new Vector3();
  placeAlong(way, 0, camera, target);
  expect(camera.position.distanceTo(new Vector3(...from.position))).toBeLessThan(1e-9);
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= 20; i++) {
    placeAlong(way, i / 20, camera, target);
    nearest = Math.min(nearest, camera.position.distanceTo(target));
  }
  expect(nearest).toBeGreaterThan(0.5);
  expect(camera.position.distanceTo(new Vector3(...to.position))).toBeLessThan(1e-9);
  expect(camera.fov).toBe(to.fov);
});

describe("keys", () => {
  const press = (key: string, ctrlKey = false) => keyTurn({ key, ctrlKey, metaKey: false, altKey: false });

  test("arrows turn, plus and minus zoom, Ctrl is the page's", () => {
    expect(press("ArrowLeft")?.round).toBeLessThan(0);
    expect(press("ArrowUp")?.over).toBeLessThan(0);
    expect(press("+")?.zoom).toBeLessThan(1);
    expect(press("-")?.zoom).toBeGreaterThan(1);
    expect(press("+", true)).toBeNull();
    expect(press("x")).toBeNull();
  });

  test("turning keeps the distance, zooming keeps the direction, and no key turns the view upside down", () => {
    const camera = new PerspectiveCamera();
    const target = new Vector3(0, 0.3, 0);
    camera.position.set(1, 0.8, 1);
    const distance = camera.position.distanceTo(target);
    turnCamera(camera, target, { round: 0.4, over: 0, zoom: 1 });
    expect(camera.position.distanceTo(target)).toBeCloseTo(distance, 12);
    turnCamera(camera, target, { round: 0, over: 0, zoom: 0.5 });
    expect(camera.position.distanceTo(target)).toBeCloseTo(distance / 2, 12);
    for (let i = 0; i < 100; i++) turnCamera(camera, target, { round: 0, over: -0.1, zoom: 1 });
    expect(camera.up.dot(new Vector3(0, 1, 0).applyQuaternion(camera.quaternion))).toBeGreaterThan(0);
  });
});
