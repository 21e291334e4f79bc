/** The camera by keyboard: arrows go round, plus and minus go nearer and away. */
import { type PerspectiveCamera, Spherical, Vector3 } from "three";

export interface KeyTurn {
  /** rad. */
  readonly round: number;
  readonly over: number;
  /** Distance is multiplied by this. */
  readonly zoom: number;
}

const STEP = (5 * Math.PI) / 180;
const NEARER = 0.9;

export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/** What a key does, or `null`. */
export function keyTurn({ key, ctrlKey, metaKey, altKey }: KeyPress): KeyTurn | null {
  if (ctrlKey || metaKey || altKey) return null;
  if (key === "+" || key === "=") return { round: 0, over: 0, zoom: NEARER };
  if (key === "-" || key === "_") return { round: 0, over: 0, zoom: 1 / NEARER };
  return ARROWS[key] ?? null;
}

const ARROWS: Readonly<Record<string, KeyTurn>> = {
  ArrowLeft: { round: -STEP, over: 0, zoom: 1 },
  ArrowRight: { round: STEP, over: 0, zoom: 1 },
  ArrowUp: { round: 0, over: -STEP, zoom: 1 },
  ArrowDown: { round: 0, over: STEP, zoom: 1 },
};

/** Lowest and highest the camera looks from, rad from straight above. */
const HIGHEST = 0.12;
const LOWEST = Math.PI * 0.54;

export function turnCamera(camera: PerspectiveCamera, target: Vector3, { round, over, zoom }: KeyTurn): void {
  const from = new Vector3().subVectors(camera.position, target);
  const place = new Spherical().setFromVector3(from);
  place.theta += round;
  place.phi = Math.min(LOWEST, Math.max(HIGHEST, place.phi + over));
  place.radius *= zoom;
  camera.position.setFromSpherical(place).add(target);
  camera.lookAt(target);
}
