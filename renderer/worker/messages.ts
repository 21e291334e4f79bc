/** What page and worker say to each other: a question with a number, an answer with the same. */
import type { DoorFault } from "../../core/door/fault.ts";
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

export type ComputeAnswer = { readonly id: number } & (
  | { readonly kind: "view"; readonly view: DoorView }
  /** The file has wrong entries. */
  | { readonly kind: "faults"; readonly faults: readonly DoorFault[] }
  /** The computation itself broke: a fault of the program, said as one. */
  | { readonly kind: "failed"; readonly message: string }
);
