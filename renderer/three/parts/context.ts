/** What every part of the picture shares: the layout, the materials, the rig of moving things. */
import { createContext, useContext, useEffect, useMemo } from "react";
import type { BufferGeometry } from "three";
import type { DoorView, UnitSystem } from "../../state/view.ts";
import type { DoorLayout } from "../layout/layout.ts";
import type { Look } from "../look/look.ts";
import type { Rig } from "../motion/rig.ts";
import type { ScenePart } from "../scene-props.ts";

export interface SceneParts {
  readonly view: DoorView;
  readonly layout: DoorLayout;
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

/** A geometry that is made again only when the layout looks different, and given back when it is not needed. */
export function useGeometry(make: (layout: DoorLayout) => BufferGeometry): BufferGeometry {
  const { layout } = useScene();
  // biome-ignore lint/correctness/useExhaustiveDependencies: layouts of one key are alike, and `make` reads nothing else.
  const geometry = useMemo(() => make(layout), [layout.key]);
  useEffect(() => () => geometry.dispose(), [geometry]);
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
