/** The one place where frames happen: reads the playhead, poses what moves. Draws only when there is something new. */
import { type RootState, useFrame, useThree } from "@react-three/fiber";
import { useEffect, useLayoutEffect, useMemo } from "react";
import type { PerspectiveCamera } from "three";
import type { Playhead } from "../../state/playhead.ts";
import type { DoorView } from "../../state/view.ts";
import { recordCanvas } from "../export/film.ts";
import { captureCanvas } from "../export/picture.ts";
import type { Quality } from "../look/quality.ts";
import { poseRig, sizeLabels } from "../motion/rig.ts";
import type { DoorSceneHandle } from "../scene-props.ts";
import { clipScene, cutPlanes } from "./clip.ts";
import { useScene } from "./context.ts";

interface DriverProps {
  readonly pinned: DoorView | null;
  readonly playhead: Playhead;
  readonly quality: Quality;
  readonly onHandle: (handle: DoorSceneHandle | null) => void;
}

export function Driver({ pinned, playhead, quality, onHandle }: DriverProps) {
  const { view, rig, cut } = useScene();
  const get = useThree((state) => state.get);
  const invalidate = useThree((state) => state.invalidate);
  const other = pinned?.replay ?? null;

  useFrame((state) => {
    poseRig(rig, view.replay, other, playhead.time);
    sizeLabels(rig, state.camera as PerspectiveCamera, state.size.height);
  });

  useEffect(() => followPlayhead(playhead, quality, get), [playhead, quality, get]);
  // Anything drawn from other props is new as well.
  useEffect(invalidate);

  const planes = useMemo(() => cutPlanes(cut), [cut]);
  // At every change: new things may have come.
  useLayoutEffect(() => {
    const { gl, scene } = get();
    gl.localClippingEnabled = true;
    clipScene(scene, planes);
  });

  useEffect(() => {
    const drawAt = (time: number) => {
      const { gl, scene, camera, size } = get();
      poseRig(rig, view.replay, other, time);
      sizeLabels(rig, camera as PerspectiveCamera, size.height);
      gl.render(scene, camera);
    };
    const { domElement: canvas } = get().gl;
    onHandle({
      canvas,
      drawAt,
      capturePng: () => captureCanvas(canvas, () => drawAt(playhead.time)),
      recordWebm: (range, signal) => recordCanvas(canvas, drawAt, range, signal),
    });
    return () => onHandle(null);
  }, [get, rig, view, other, playhead, onHandle]);
  return null;
}

/** ms without a tick after which the picture counts as standing. */
const SETTLED = 250;

/** Draws at every tick, coarser while there is motion where drawing is dear. */
function followPlayhead(playhead: Playhead, quality: Quality, get: () => RootState): () => void {
  let timer = 0;
  const settle = () => {
    get().setDpr(quality.still);
    get().invalidate();
  };
  const unsubscribe = playhead.subscribe(() => {
    if (quality.moving !== quality.still) {
      if (get().viewport.dpr !== quality.moving) get().setDpr(quality.moving);
      window.clearTimeout(timer);
      timer = window.setTimeout(settle, SETTLED);
    }
    get().invalidate();
  });
  return () => {
    window.clearTimeout(timer);
    unsubscribe();
  };
}
