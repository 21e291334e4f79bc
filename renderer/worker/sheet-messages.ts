/** What the page and the thread that writes a build sheet say to each other. */
import type { PaperName } from "../../core/sheet/paper.ts";
import type { HoldStudy } from "../../core/study/hold-study.ts";
import type { UnitSystem } from "../state/view.ts";

export interface SheetOrder {
  readonly text: string;
  readonly units: UnitSystem;
  readonly paper: PaperName;
  /** The study of this very door, where one ran. */
  readonly study: HoldStudy | null;
  /** Of the folder within the archive. */
  readonly name: string;
}

export type SheetAnswer =
  | { readonly kind: "zip"; readonly bytes: Uint8Array }
  | { readonly kind: "refused"; readonly reasons: readonly string[] };
