/** What the 3D door takes and gives beyond the page's own contract (state/view.ts). */
import type { SceneHandle as PageHandle, DoorSceneProps as PageProps, UnitSystem } from "../state/view.ts";

/** What a click in the picture points at: the door file's sections. */
export type ScenePart = "animals" | "opening" | "flap" | "hinge" | "seal" | "magnets" | "latch" | "solenoid";

/** A stretch of the passage, s from detection; `rate` is door seconds per second of film. */
export interface FilmRange {
  readonly from: number;
  readonly to: number;
  readonly rate: number;
}

export interface DoorSceneHandle extends PageHandle {
  /** The picture as it stands. */
  capturePng(): Promise<Blob>;
  /** Films the stretch in real time; fails with a sentence for people where the browser cannot record. */
  recordWebm(range: FilmRange, signal?: AbortSignal): Promise<Blob>;
}

export interface DoorSceneProps extends Omit<PageProps, "onHandle"> {
  readonly onHandle?: (handle: DoorSceneHandle | null) => void;
  /** Protractor at the hinge with the bands in which the bolt finds its slot or rides. Default off. */
  readonly angleScale?: boolean;
  /** For the dimensions of the section. Default metric. */
  readonly units?: UnitSystem;
  readonly onPick?: (part: ScenePart) => void;
}
