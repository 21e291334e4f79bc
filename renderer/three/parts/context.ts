/**
 * What every part of the picture shares: the materials, the rig of moving things. What a part shows of the door it is given, so that a
 * change elsewhere does not touch it.
 */
import { createContext, useContext, useEffect, useMemo, useRef } from "react";
import type { BufferGeometry } from "three";
import { sharing } from "../../state/share.ts";
import type { UnitSystem } from "../../state/view.ts";
import type { Look } from "../look/look.ts";
import type { Rig } from "../motion/rig.ts";
import type { ScenePart } from "../scene-props.ts";

export interface SceneParts {
  /** Hinge axis above the floor, m. */
  readonly hingeHeight: number;
  readonly look: Look;
  readonly rig: Rig;
  /** The page's type has come. */
  readonly typeReady: boolean;
  readonly units: UnitSystem;
  /** x of the cut, m; `null` where nothing is cut away. */
  readonly cut: number | null;
  /** Something moved: to be drawn. */
  readonly touch: () => void;
  readonly pick: (part: ScenePart) => void;
}

const Context = createContext<SceneParts | null>(null);

export const SceneProvider = Context.Provider;

export function useScene(): SceneParts {
  const parts = useContext(Context);
  if (parts === null) throw new Error("a part of the 3D door must be inside DoorScene");
  return parts;
}

/** Parts of a value that are the same at the next render as the very same objects. */
export function useShared<T>(value: T): T {
  const kept = useRef(value);
  kept.current = sharing(kept.current, value);
  return kept.current;
}

/** The geometry of a thing: made again only for another thing, and given back when it is not needed. */
export function useGeometry<T>(thing: T, make: (thing: T) => BufferGeometry): BufferGeometry {
  // biome-ignore lint/correctness/useExhaustiveDependencies: `make` reads nothing but the thing.
  const geometry = useMemo(() => wholly(make(thing)), [thing]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

/** Says how much of a geometry is drawn: three's own "all there is", an infinite count, is a new number at every drawing. */
export function wholly(geometry: BufferGeometry): BufferGeometry {
  const corners = geometry.index ?? geometry.attributes.position;
  if (corners !== undefined) geometry.setDrawRange(0, corners.count);
  return geometry;
}

/** Adds something to one of the rig's lists while it is on the screen. */
export function useRig<T>(list: (rig: Rig) => T[], item: T | null): void {
  const { rig } = useScene();
  const held = list(rig);
  useEffect(() => {
    if (item === null) return;
    held.push(item);
    return () => {
      held.splice(held.indexOf(item), 1);
    };
  }, [held, item]);
}
