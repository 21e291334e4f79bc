/** The one place where frames happen: reads the playhead, poses what moves. Draws only when there is something new. */
import { useFrame, useThree } from "@react-three/fiber";
import { useEffect, useLayoutEffect } from "react";
import { type PerspectiveCamera, Plane, Vector3 } from "three";
import type { Playhead } from "../../state/playhead.ts";
import type { DoorView } from "../../state/view.ts";
import { recordCanvas } from "../export/film.ts";
import { captureCanvas } from "../export/picture.ts";
import { poseRig, sizeLabels } from "../motion/rig.ts";
import type { DoorSceneHandle } from "../scene-props.ts";
import { useScene } from "./context.ts";

interface DriverProps {
  readonly pinned: DoorView | null;
  readonly playhead: Playhead;
  readonly onHandle: (handle: DoorSceneHandle | null) => void;
}

export function Driver({ pinned, playhead, onHandle }: DriverProps) {
  const { view, rig, cut } = useScene();
  const get = useThree((state) => state.get);
  const invalidate = useThree((state) => state.invalidate);
  const other = pinned?.replay ?? null;

  useFrame((state) => {
    poseRig(rig, view.replay, other, playhead.time);
    sizeLabels(rig, state.camera as PerspectiveCamera, state.size.height);
  });

  useEffect(() => playhead.subscribe(invalidate), [playhead, invalidate]);
  // Anything drawn from other props is new as well.
  useEffect(invalidate);

  useLayoutEffect(() => {
    const { gl } = get();
    gl.clippingPlanes = cut === null ? [] : [new Plane(new Vector3(1, 0, 0), -cut)];
  }, [get, cut]);

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
