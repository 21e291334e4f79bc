/** What the page and the thread that lays out paper say to each other. */
import type { PaperName } from "../../core/sheet/paper.ts";
import type { DocumentName } from "../../core/sheet/paper-set.ts";
import type { SymbolSet } from "../../core/sheet/wiring.ts";
import type { HoldStudy } from "../../core/study/hold-study.ts";
import type { UnitSystem } from "../state/view.ts";

/** What the set is made from. */
export interface SheetTask {
  /** The door file. */
  readonly text: string;
  readonly units: UnitSystem;
  readonly paper: PaperName;
  readonly symbols: SymbolSet;
  /** The study of this very door, where one ran. */
  readonly study: HoldStudy | null;
}

export type SheetWant =
  | { readonly kind: "sheets" }
  /** A file of the set, by its name. */
  | { readonly kind: "file"; readonly name: string }
  /** One sheet as SVG with its faces in it, or with outlines in place of words. */
  | {
      readonly kind: "sheet";
      readonly document: DocumentName;
      readonly sheet: string;
      readonly outlined: boolean;
    }
  /** All files in one, below a folder of that name. */
  | { readonly kind: "archive"; readonly folder: string };

export interface SheetOrder {
  /** Given back with the answer. */
  readonly id: number;
  readonly task: SheetTask;
  readonly want: SheetWant;
}

/** A sheet as one sees it, at its size on paper. */
export interface SheetView {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly svg: string;
}

export interface DocumentView {
  readonly name: DocumentName;
  readonly title: string;
  readonly what: string;
  readonly fullSize: boolean;
  readonly sheets: readonly SheetView[];
  readonly files: readonly string[];
  /** Why there is none. */
  readonly missing: string | null;
}

export interface PaperView {
  readonly documents: readonly DocumentView[];
  /** What speaks against building it: failing findings, sentences. */
  readonly fails: readonly string[];
  /** Where the hold on the sheets comes from; `null` where none is sure. */
  readonly hold: "study" | "first setting" | null;
}

export type SheetAnswer = { readonly id: number } & (
  | { readonly kind: "sheets"; readonly view: PaperView }
  | { readonly kind: "bytes"; readonly bytes: Uint8Array }
  | { readonly kind: "refused"; readonly reasons: readonly string[] }
);
