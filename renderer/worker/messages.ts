/** What page and worker say to each other: a question with a number, an answer with the same. */
import type { DoorFault } from "../../core/door/fault.ts";
import type { Finding } from "../../core/review/finding.ts";
import type { DoorView, UnitSystem } from "../state/view.ts";

export interface ComputeRequest {
  readonly id: number;
  readonly kind: "compute";
  /** The door file. */
  readonly text: string;
  /** A hold to try in place of the timer's, s. */
  readonly hold: number | null;
  /** Of the figures in sentences. */
  readonly units: UnitSystem;
}

/** Asks for the findings with their ways out. */
export interface AdviceRequest {
  readonly id: number;
  readonly kind: "advise";
  readonly text: string;
  readonly units: UnitSystem;
}

export type DoorRequest = ComputeRequest | AdviceRequest;

interface Failed {
  readonly id: number;
  /** The computation itself broke: a fault of the program, said as one. */
  readonly kind: "failed";
  readonly message: string;
}

interface Faulty {
  readonly id: number;
  /** The file has wrong entries. */
  readonly kind: "faults";
  readonly faults: readonly DoorFault[];
}

export type ComputeAnswer =
  | { readonly id: number; readonly kind: "view"; readonly view: DoorView }
  | Faulty
  | Failed;

export type AdviceAnswer =
  | { readonly id: number; readonly kind: "advice"; readonly findings: readonly Finding[] }
  | Faulty
  | Failed;

export type DoorAnswer = ComputeAnswer | AdviceAnswer;
