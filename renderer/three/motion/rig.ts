/**
 * The things that move, collected once by the components that make them; one function poses them all for a moment of the
 * passage. Runs every frame: reads the replay, writes transforms, allocates nothing.
 */
import type { Object3D, PerspectiveCamera, Sprite } from "three";
import type { Replay } from "../../../core/passage/replay.ts";
import type { AnimalBody } from "./animal-body.ts";
import { type Gait, poseGait, type Step } from "./gait.ts";
import { animalPresence, boltShift, flapTurn, nosePlace } from "./pose.ts";
import { emptySample, type Sample, sampleReplay } from "./sampler.ts";

export interface AnimalRig {
  readonly body: AnimalBody;
  readonly gait: Gait;
  readonly step: Step;
  readonly floorDepth: number;
  readonly root: Object3D;
  /** Upper and lower part of each limb by turns. */
  readonly joints: readonly Object3D[];
  readonly fade: (presence: number) => void;
}

export interface BoltRig {
  readonly direction: 1 | -1;
  /** m between yoke and collar with the bolt withdrawn. */
  readonly springLength: number;
  readonly shaft: Object3D;
  readonly spring: Object3D;
}

export interface Rig {
  readonly sample: Sample;
  readonly ghostSample: Sample;
  /** All turn with the flap. */
  readonly flaps: Set<Object3D>;
  readonly ghosts: Set<Object3D>;
  readonly bolts: Set<BoltRig>;
  /** Shown while the coil is driven, and while it is not. */
  readonly coilOn: Set<Object3D>;
  readonly coilOff: Set<Object3D>;
  readonly animals: Set<AnimalRig>;
  /** Sprites of a fixed size in pixels, kept in `userData.size`. */
  readonly labels: Set<Sprite>;
}

export function createRig(): Rig {
  return {
    sample: emptySample(),
    ghostSample: emptySample(),
    flaps: new Set(),
    ghosts: new Set(),
    bolts: new Set(),
    coilOn: new Set(),
    coilOff: new Set(),
    animals: new Set(),
    labels: new Set(),
  };
}

export function poseRig(rig: Rig, replay: Replay, pinned: Replay | null, time: number): void {
  const sample = sampleReplay(replay, time, rig.sample);
  for (const flap of rig.flaps) flap.rotation.x = flapTurn(sample.angle);
  for (const bolt of rig.bolts) poseBolt(bolt, sample.bolt);
  for (const on of rig.coilOn) on.visible = sample.coil;
  for (const off of rig.coilOff) off.visible = !sample.coil;
  for (const animal of rig.animals) poseAnimal(animal, sample.nose, replay.direction);
  if (pinned === null) return;
  const other = sampleReplay(pinned, time, rig.ghostSample);
  for (const ghost of rig.ghosts) ghost.rotation.x = flapTurn(other.angle);
}

function poseBolt(bolt: BoltRig, extension: number): void {
  bolt.shaft.position.y = boltShift(extension, bolt.direction);
  bolt.spring.scale.y = (bolt.springLength + extension) / bolt.springLength;
}

function poseAnimal(animal: AnimalRig, nose: number, direction: 1 | -1): void {
  const presence = animalPresence(nose, animal.body.length, animal.floorDepth);
  animal.root.visible = presence > 0;
  if (presence === 0) return;
  animal.root.position.z = nosePlace(nose, direction);
  animal.root.rotation.y = direction === 1 ? 0 : Math.PI;
  animal.fade(presence);
  poseGait(animal.body, animal.step, nose, animal.gait);
  const { angles } = animal.gait;
  for (let i = 0; i < animal.joints.length; i += 2) {
    animal.joints[i].rotation.x = -angles[i];
    animal.joints[i + 1].rotation.x = -(angles[i + 1] - angles[i]);
  }
}

/** Keeps labels at their size on the screen, `height` pixels high. */
export function sizeLabels(rig: Rig, camera: PerspectiveCamera, height: number): void {
  const perPixel = (2 * Math.tan((camera.fov * Math.PI) / 360)) / height;
  for (const label of rig.labels) {
    const { width, height: tall } = label.userData.size as { width: number; height: number };
    label.scale.set(width * perPixel, tall * perPixel, 1);
  }
}
