/** What the page and the threads of a map say to each other. */
import type { MapRequest, MapSubject, MapValue } from "../../core/study/map.ts";
import type { UnitSystem } from "../state/view.ts";

export interface MapOrder {
  readonly text: string;
  /** "KEY=FROM..TO:N", in any unit of the key. */
  readonly x: string;
  readonly y: string | null;
  /** Name of a result. */
  readonly of: string;
  readonly units: UnitSystem;
  readonly share: MapShare;
}

/** Of the points in the order in which they are computed: the one at place `first`, and every `of`-th after it. */
export interface MapShare {
  readonly first: number;
  readonly of: number;
}

/** Places row by row, x fastest; `null` where the figure does not exist. */
export type MapBatch = readonly (readonly [place: number, value: MapValue | null])[];

export type MapAnswer =
  | { readonly kind: "begun"; readonly request: MapRequest; readonly subject: MapSubject }
  | { readonly kind: "points"; readonly points: MapBatch }
  | { readonly kind: "done" }
  | { readonly kind: "refused"; readonly reasons: readonly string[] };
