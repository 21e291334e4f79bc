/** The one place where frames happen: reads the playhead, poses what moves. Draws only when there is something new. */
import { useFrame, useThree } from "@react-three/fiber";
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
  readonly view: DoorView;
  readonly pinned: DoorView | null;
  readonly playhead: Playhead;
  readonly quality: Quality;
  readonly onHandle: (handle: DoorSceneHandle | null) => void;
}

export function Driver({ view, pinned, playhead, quality, onHandle }: DriverProps) {
  const { rig, cut, touch } = useScene();
  const get = useThree((state) => state.get);
  const other = pinned?.replay ?? null;

  useFrame((state) => {
    poseRig(rig, view.replay, other, playhead.time);
    sizeLabels(rig, state.camera as PerspectiveCamera, state.size.height);
  });

  useEffect(() => playhead.subscribe(touch), [playhead, touch]);
  // Anything drawn from other props is motion as well.
  useEffect(touch);

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
      capturePng: () => {
        get().setDpr(quality.still);
        return captureCanvas(canvas, () => drawAt(playhead.time)).finally(touch);
      },
      recordWebm: (range, signal) => {
        get().setDpr(quality.film);
        return recordCanvas(canvas, drawAt, range, signal).finally(touch);
      },
    });
    return () => onHandle(null);
  }, [get, rig, view, other, playhead, quality, touch, onHandle]);
  return null;
}
