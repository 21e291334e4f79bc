/** Words at a place in the picture. */
import { useEffect, useMemo } from "react";
import type { Vec3 } from "../layout/solids.ts";
import { disposeLabel, type LabelStyle, makeLabel } from "../look/labels.ts";
import { useRig, useScene } from "./context.ts";

interface LabelProps extends LabelStyle {
  readonly text: string;
  readonly at: Vec3;
  /** Where the place is in the words' box: 0 left or bottom, 1 right or top. Default the middle. */
  readonly anchor?: readonly [number, number];
}

const MIDDLE = [0.5, 0.5] as const;

export function Label({
  text,
  at,
  anchor = MIDDLE,
  colour,
  ground,
  letters,
  strong = false,
  ring = "",
}: LabelProps) {
  const { look, typeReady } = useScene();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same words look otherwise once the type has come.
  const sprite = useMemo(() => {
    const style = {
      colour,
      ground,
      letters,
      strong,
      ...(ring === "" ? {} : { ring }),
    };
    return makeLabel(text, style, look.palette);
  }, [text, colour, ground, letters, strong, ring, look.palette, typeReady]);
  useEffect(() => () => disposeLabel(sprite), [sprite]);
  useRig((rig) => rig.labels, sprite);
  const [x, y] = anchor;
  useEffect(() => {
    sprite.center.set(x, y);
  }, [sprite, x, y]);
  return <primitive object={sprite} position={at} />;
}
