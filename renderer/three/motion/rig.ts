/**
 * The things that move, collected once by the components that make them; one function poses them all for a moment of the
 * passage. Runs every frame: reads the replay, writes transforms, allocates nothing (hence the
 * loops by index).
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
  readonly flaps: Object3D[];
  readonly ghosts: Object3D[];
  readonly bolts: BoltRig[];
  /** Shown while the coil is driven, and while it is not. */
  readonly coilOn: Object3D[];
  readonly coilOff: Object3D[];
  readonly animals: AnimalRig[];
  /** Sprites of a fixed size in pixels, kept in `userData.size`. */
  readonly labels: Sprite[];
}

export function createRig(): Rig {
  return {
    sample: emptySample(),
    ghostSample: emptySample(),
    flaps: [],
    ghosts: [],
    bolts: [],
    coilOn: [],
    coilOff: [],
    animals: [],
    labels: [],
  };
}

export function poseRig(rig: Rig, replay: Replay, pinned: Replay | null, time: number): void {
  const sample = sampleReplay(replay, time, rig.sample);
  turn(rig.flaps, sample.angle);
  for (let i = 0; i < rig.bolts.length; i++) poseBolt(rig.bolts[i], sample.bolt);
  show(rig.coilOn, sample.coil);
  show(rig.coilOff, !sample.coil);
  for (let i = 0; i < rig.animals.length; i++) poseAnimal(rig.animals[i], sample.nose, replay.direction);
  if (pinned === null) return;
  turn(rig.ghosts, sampleReplay(pinned, time, rig.ghostSample).angle);
}

function turn(flaps: readonly Object3D[], angle: number): void {
  for (let i = 0; i < flaps.length; i++) flaps[i].rotation.x = flapTurn(angle);
}

function show(objects: readonly Object3D[], visible: boolean): void {
  for (let i = 0; i < objects.length; i++) objects[i].visible = visible;
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
  for (let i = 0; i < rig.labels.length; i++) {
    const label = rig.labels[i];
    const { width, height: tall } = label.userData.size as { width: number; height: number };
    label.scale.set(width * perPixel, tall * perPixel, 1);
  }
}
