/** Where the camera stands for each view, so that what matters fills the picture whatever its shape. Pure. */
import type { Camera } from "../../state/view.ts";
import { OUTDOOR_FACE } from "../layout/assumptions.ts";
import type { DoorLayout } from "../layout/layout.ts";
import { type Box, box, middle, type Vec3 } from "../layout/solids.ts";

export interface Standpoint {
  readonly position: Vec3;
  readonly target: Vec3;
  /** Vertical field of view, degrees. Small ones come near to a drawing without perspective. */
  readonly fov: number;
}

interface View {
  /** From what is looked at to the camera. */
  readonly from: Vec3;
  readonly fov: number;
  readonly frame: Box;
}

/** `direction` is the passage's: the free view starts on the side that the flap opens to. */
export function standpoint(
  camera: Camera,
  section: boolean,
  layout: DoorLayout,
  aspect: number,
  direction: 1 | -1,
): Standpoint {
  const view = viewOf(camera, section, layout, direction);
  const target = middle(view.frame);
  const from = unit(view.from);
  const distance = fitDistance(view.frame, target, from, view.fov, aspect);
  return {
    position: [
      target[0] + from[0] * distance,
      target[1] + from[1] * distance,
      target[2] + from[2] * distance,
    ],
    target,
    fov: view.fov,
  };
}

/** How far within the flap's edge the side view is cut, m: the brush beside it would hide the flap. */
const WITHIN = 0.001;

/** Everything nearer to the camera of the side view than this x is cut away; `null` where nothing is. */
export function cutPlace(camera: Camera, section: boolean, layout: DoorLayout): number | null {
  if (section) return 0;
  return camera === "side" ? -layout.plate.halfWidth + WITHIN : null;
}

function viewOf(camera: Camera, section: boolean, layout: DoorLayout, direction: 1 | -1): View {
  if (camera === "side") {
    return section
      ? { from: [-1, 0.02, 0], fov: 9, frame: sideFrame(layout) }
      : { from: [-1, 0.13, -0.3], fov: 16, frame: sideFrame(layout) };
  }
  if (camera === "latch" && layout.latch !== null) {
    return section
      ? { from: [-1, 0.015, 0], fov: 9, frame: latchFrame(layout, 0.03) }
      : { from: [-0.14, 0.1, -1], fov: 20, frame: mechanismFrame(layout) };
  }
  const front = frontFrame(layout);
  if (camera === "inside") return { from: [-0.16, 0.2, -1], fov: 26, frame: front };
  if (camera === "outside") return { from: [-0.2, 0.22, 1], fov: 26, frame: front };
  return {
    from: section ? [-0.8, 0.3, 0.55 * direction] : [-0.66, 0.34, 0.85 * direction],
    fov: 26,
    frame: freeFrame(layout, direction),
  };
}

/** The opening with the wall around it, at the depth of the flap. */
function frontFrame({ opening, wall }: DoorLayout): Box {
  const over = 0.3 * (wall.bounds.max[1] - opening.top);
  const side = opening.halfWidth + 0.1;
  return box([-side, side], [-0.03, opening.top + over], [-OUTDOOR_FACE, OUTDOOR_FACE]);
}

/** The opening and the room that the flap swings into. */
function freeFrame(layout: DoorLayout, direction: 1 | -1): Box {
  const { min, max } = frontFrame(layout);
  return box([min[0], max[0]], [min[1], max[1]], [-direction * OUTDOOR_FACE, direction * layout.reach * 1.2]);
}

/** The swinging flap and the floor under it. */
function sideFrame({ opening, reach }: DoorLayout): Box {
  const half = reach * 1.08;
  return box([-0.01, 0.01], [-0.05, opening.top + 0.05], [-half, half]);
}

function latchFrame({ latch, hingeHeight }: DoorLayout, half: number): Box {
  const mouth = latch === null ? 0 : (latch.boltOn === "frame" ? hingeHeight : 0) + latch.mouth;
  const room = latch === null ? half : Math.max(half, 1.6 * latch.bolt.radius + 4 * latch.bolt.stroke);
  return box([-room, room], [mouth - room * 1.35, mouth + room * 0.75], [-room, room]);
}

/** From the strike to the far end of the solenoid. */
function mechanismFrame(layout: DoorLayout): Box {
  const { latch, hingeHeight } = layout;
  if (latch === null) return latchFrame(layout, 0.03);
  const { coil } = latch.bolt;
  const held = latch.boltOn === "flap" ? hingeHeight : 0;
  const meeting = (latch.boltOn === "frame" ? hingeHeight : 0) + latch.mouth;
  const end = held + coil.centre[1] - latch.bolt.direction * (coil.length / 2 + 0.006);
  const over = meeting + latch.bolt.direction * 0.016;
  const half = Math.abs(over - end) * 0.4;
  return box([-half, half], [end, over], [-half * 0.5, half * 0.5]);
}

/**
 * Least distance from the target at which every corner of `frame` is in the picture: across a half-width the picture covers
 * tan(half angle) times the distance in depth.
 */
export function fitDistance(frame: Box, target: Vec3, from: Vec3, fov: number, aspect: number): number {
  const up = Math.tan((fov * Math.PI) / 360) * 0.94;
  const wide = up * aspect;
  const right = unit(cross([0, 1, 0], from));
  const above = cross(from, right);
  let distance = 0;
  for (let i = 0; i < 8; i++) {
    const corner: Vec3 = [
      (i & 1 ? frame.max : frame.min)[0] - target[0],
      (i & 2 ? frame.max : frame.min)[1] - target[1],
      (i & 4 ? frame.max : frame.min)[2] - target[2],
    ];
    const near = dot(corner, from);
    const needed = Math.max(Math.abs(dot(corner, right)) / wide, Math.abs(dot(corner, above)) / up);
    distance = Math.max(distance, near + needed);
  }
  return distance;
}

function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: Vec3): Vec3 {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}
