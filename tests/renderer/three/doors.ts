/** Doors for the scene's tests: the reference doors and the examples, laid out as the page does it. */
import { readdirSync, readFileSync } from "node:fs";
import { type Door, readDoor } from "../../../core/door/index.ts";
import { type DoorLayout, layoutDoor } from "../../../renderer/three/layout/layout.ts";

const FOLDERS = ["../../reference/model/doors/", "../../../assets/examples/"].map(
  (path) => new URL(path, import.meta.url),
);

function readFile(url: URL): Door {
  const read = readDoor(readFileSync(url, "utf8"));
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join("\n"));
  return read.door;
}

export const DOORS: ReadonlyMap<string, Door> = new Map(
  FOLDERS.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith(".door.json"))
      .sort()
      .map((name) => [name, readFile(new URL(name, folder))] as const),
  ),
);

export function doorNamed(name: string): Door {
  const door = DOORS.get(name);
  if (door === undefined) throw new Error(`no door ${name}`);
  return door;
}

/** Hinge height and reach by the model's own words: z_h = sill + clearance + b, b = o + H. */
export function given({ opening, flap }: Door): { hingeHeight: number; reach: number } {
  const reach = flap.hingeOffset + flap.height;
  return { hingeHeight: opening.sillHeight + flap.bottomClearance + reach, reach };
}

export function layoutOf(door: Door): DoorLayout {
  return layoutDoor(door, given(door));
}
