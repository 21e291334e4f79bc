/** Brings the camera to the standpoint asked for; from there it can be turned by pointer and keys. */
import { useFrame, useThree } from "@react-three/fiber";
import { useEffect, useMemo, useRef } from "react";
import type { PerspectiveCamera } from "three";
import { OrbitControls } from "three/examples/jsm/controls/OrbitControls.js";
import type { Camera } from "../../state/view.ts";
import type { DoorLayout } from "../layout/layout.ts";
import { useScene } from "../parts/context.ts";
import { type KeyTurn, turnCamera } from "./keys.ts";
import { type Move, move, placeAlong } from "./path.ts";
import { type Standpoint, standpoint } from "./standpoints.ts";

/** s from one standpoint to another. */
const DURATION = 0.35;

export interface CameraHandle {
  /** Turns or zooms by one key press. */
  readonly key: (turn: KeyTurn) => void;
}

interface CameraRigProps {
  readonly layout: DoorLayout;
  /** Of the passage. */
  readonly direction: 1 | -1;
  readonly camera: Camera;
  readonly section: boolean;
  readonly onFreeOrbit: () => void;
  readonly onReady: (handle: CameraHandle) => void;
}

export function CameraRig(props: CameraRigProps) {
  const { layout, direction, camera: view, section, onFreeOrbit, onReady } = props;
  const { touch } = useScene();
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const size = useThree((state) => state.size);
  const controls = useControls(camera);
  const turned = useRef(false);
  const moving = useRef<{ way: Move; since: number } | null>(null);
  const asked = useRef<string | null>(null);
  const aspect = size.width / Math.max(1, size.height);
  const request = `${view} ${section}`;

  // biome-ignore lint/correctness/useExhaustiveDependencies: only a standpoint that is asked for looks at where the passage goes.
  useEffect(() => {
    const first = asked.current === null;
    const same = asked.current === request;
    asked.current = request;
    if (turned.current && (same || view === "free")) return;
    turned.current = false;
    const to = standpoint(view, section, layout, aspect, direction);
    const way = move(first ? to : standing(camera, controls), to);
    if (first || same || reducedMotion()) {
      moving.current = null;
      placeAlong(way, 1, camera, controls.target);
    } else moving.current = { way, since: Number.NaN };
    touch();
  }, [request, layout, aspect, camera, controls, touch]);

  useFrame((state) => {
    const current = moving.current;
    if (current === null) return;
    const now = state.clock.elapsedTime;
    if (Number.isNaN(current.since)) current.since = now;
    const part = (now - current.since) / DURATION;
    placeAlong(current.way, part, camera, controls.target);
    if (part >= 1) moving.current = null;
    else touch();
  });

  useEffect(() => {
    const byHand = () => {
      moving.current = null;
      turned.current = true;
      onFreeOrbit();
    };
    // A click is no turn: only a hold that moves the camera is.
    let held = false;
    const hold = () => {
      held = true;
    };
    const release = () => {
      held = false;
    };
    const changed = () => {
      if (held) byHand();
      touch();
    };
    controls.addEventListener("start", hold);
    controls.addEventListener("end", release);
    controls.addEventListener("change", changed);
    onReady({
      key(turn) {
        byHand();
        turnCamera(camera, controls.target, turn);
        controls.update();
        touch();
      },
    });
    return () => {
      controls.removeEventListener("start", hold);
      controls.removeEventListener("end", release);
      controls.removeEventListener("change", changed);
    };
  }, [controls, camera, touch, onFreeOrbit, onReady]);
  return null;
}

function useControls(camera: PerspectiveCamera): OrbitControls {
  const element = useThree((state) => state.gl.domElement);
  const controls = useMemo(() => {
    const made = new OrbitControls(camera);
    made.enableDamping = false;
    made.maxPolarAngle = Math.PI * 0.54;
    made.minDistance = 0.05;
    made.maxDistance = 30;
    return made;
  }, [camera]);
  useEffect(() => {
    controls.connect(element);
    return () => controls.dispose();
  }, [controls, element]);
  return controls;
}

function standing(camera: PerspectiveCamera, controls: OrbitControls): Standpoint {
  const { position, fov } = camera;
  const { target } = controls;
  return { position: [position.x, position.y, position.z], target: [target.x, target.y, target.z], fov };
}

function reducedMotion(): boolean {
  return matchMedia("(prefers-reduced-motion: reduce)").matches;
}
