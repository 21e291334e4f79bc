/** A short fingerprint of a door, to tell whether two parts of a study are of the same one. */
import type { Door } from "../door/door.ts";

/** A door as JSON can hold it: the tolerances' map as a list of its entries. */
export function doorAsJson(door: Door): unknown {
  const tolerances = [...door.study.tolerances].sort(([a], [b]) => (a < b ? -1 : 1));
  return { ...door, study: { ...door.study, tolerances } };
}

/** The way back. The JSON is known to be what `doorAsJson` made (its fingerprint says so). */
export function doorFromJson(json: unknown): Door {
  const door = json as Omit<Door, "study"> & {
    study: Omit<Door["study"], "tolerances"> & { tolerances: [] };
  };
  return { ...door, study: { ...door.study, tolerances: new Map(door.study.tolerances) } };
}

/** Keys in a fixed order, whatever order the objects were made in. */
function canonical(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(canonical);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return entries.map(([key, one]) => [key, canonical(one)]);
}

/** Two passes of FNV-1a (Fowler, Noll and Vo; 32 bits, from two starts) over a text, as 16 hexadecimal digits. */
export function fingerprint(text: string): string {
  const pass = (start: number) => {
    let hash = start;
    for (let i = 0; i < text.length; i++) {
      const unit = text.charCodeAt(i);
      hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
      hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
    }
    return (hash >>> 0).toString(16).padStart(8, "0");
  };
  return pass(0x811c9dc5) + pass(0x050c5d1f);
}

/** Fingerprint of everything in a door that the study's figures depend on: all but its name and notes. */
export function doorDigest(door: Door): string {
  return fingerprint(JSON.stringify(canonical(doorAsJson({ ...door, name: "", notes: "" }))));
}
