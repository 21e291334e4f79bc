/** A group that answers to a click, not to the end of a drag. */
import type { ThreeEvent } from "@react-three/fiber";
import type { ReactNode } from "react";
import type { ScenePart } from "../scene-props.ts";
import { useScene } from "./context.ts";

/** Pixels the pointer may move between press and release. */
const STILL = 4;

export function Pick({ part, children }: { readonly part: ScenePart; readonly children: ReactNode }) {
  const { pick } = useScene();
  const onClick = (event: ThreeEvent<MouseEvent>) => {
    event.stopPropagation();
    if (event.delta <= STILL) pick(part);
  };
  // biome-ignore lint/a11y/noStaticElementInteractions: a group of the scene is no element; the page offers the same by keyboard.
  return <group onClick={onClick}>{children}</group>;
}
