/**
 * The centring magnets of the doors of a map: tables that differ only in gap, remanence and temperature come out of one
 * family, microseconds each instead of milliseconds.
 */
import type { Door, Magnets } from "../door/door.ts";
import { type Centring, centring } from "../parts/centring.ts";
import {
  emptyTable,
  fillTorqueTable,
  type GapRange,
  type TorqueFamily,
  torqueFamily,
} from "../parts/magnet-family.ts";
import { type MagnetResults, magnetResults } from "../parts/magnets.ts";

/** Families kept: one per value of an axis that changes the magnets' form. */
const MOST_FAMILIES = 128;
/** Centrings kept: the gaps of one axis. */
const MOST_CENTRINGS = 512;

export class MapMagnets {
  private readonly families = new Map<string, TorqueFamily>();
  private readonly centrings = new Map<string, Centring>();
  private readonly gaps: GapRange | "fixed" | null;

  /**
   * `gaps`: all that the map asks for, m; "fixed" where it changes remanence or temperature alone; `null` where it changes
   * nothing that a family spares.
   */
  constructor(gaps: GapRange | "fixed" | null) {
    this.gaps = gaps;
  }

  /** Table and figures of a door's magnets, to 10⁻⁶ of the peak torque; the review's own where no family is used. */
  centring({ magnets, hinge }: Door): Centring | null {
    if (magnets === null) return null;
    return kept(this.centrings, MOST_CENTRINGS, JSON.stringify([magnets, hinge.stopAngle]), () =>
      this.made(magnets, hinge.stopAngle),
    );
  }

  private made(magnets: Magnets, stopAngle: number): Centring {
    const { gap, remanence, temperature } = magnets;
    if (this.gaps === null) return centring(magnets, stopAngle);
    const form = JSON.stringify([{ ...magnets, gap: 0, remanence: 0, temperature: 0 }, stopAngle]);
    const range = this.gaps === "fixed" ? { low: gap, high: gap } : this.gaps;
    const family = kept(this.families, MOST_FAMILIES, form, () => torqueFamily(magnets, stopAngle, range));
    const table = emptyTable(family);
    fillTorqueTable(family, gap, remanence, temperature, table);
    let figures: MagnetResults | null = null;
    return {
      table,
      get figures() {
        figures ??= magnetResults(magnets, table, stopAngle);
        return figures;
      },
    };
  }
}

/** The entry of a key, made where it is missing; the oldest goes where there are too many. */
function kept<T>(store: Map<string, T>, most: number, key: string, make: () => T): T {
  const old = store.get(key);
  if (old !== undefined) return old;
  if (store.size >= most) store.delete(store.keys().next().value as string);
  const made = make();
  store.set(key, made);
  return made;
}
