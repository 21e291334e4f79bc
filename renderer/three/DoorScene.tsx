/**
 * The door in a wall, as built and as it swings: replays a computed passage from the shared playhead.
 * Levels: `layout/` measures to places · `motion/` replay to poses · `shape/`, `look/` geometry and materials · `parts/` one
 * component per subject · `camera/` standpoints · `export/` pictures and films · this.
 */
import { Canvas } from "@react-three/fiber";
import { type KeyboardEvent, useCallback, useEffect, useMemo, useRef, useState } from "react";
import { PCFShadowMap } from "three";
import type { SceneOptions, Theme } from "../state/view.ts";
import { type CameraHandle, CameraRig } from "./camera/CameraRig.tsx";
import { keyTurn } from "./camera/keys.ts";
import { cutPlace } from "./camera/standpoints.ts";
import { layoutDoor } from "./layout/layout.ts";
import { createLook } from "./look/look.ts";
import { usePalette } from "./look/use-palette.ts";
import { createRig } from "./motion/rig.ts";
import { AngleScale } from "./parts/AngleScale.tsx";
import { Animal } from "./parts/Animal.tsx";
import { SceneProvider } from "./parts/context.ts";
import { Dimensions } from "./parts/Dimensions.tsx";
import { Driver } from "./parts/Driver.tsx";
import { Flap, Hinge } from "./parts/Flap.tsx";
import { Ghost } from "./parts/Ghost.tsx";
import { CoilSign, Latch } from "./parts/Latch.tsx";
import { Light } from "./parts/Light.tsx";
import { Magnets } from "./parts/Magnets.tsx";
import { Seal } from "./parts/Seal.tsx";
import { SectionFaces } from "./parts/SectionFaces.tsx";
import { Cover, Floor, Frame, Lamp, Wall } from "./parts/Wall.tsx";
import type { DoorSceneProps, ScenePart } from "./scene-props.ts";

/** Screen pixels per CSS pixel, at most: more costs frames and shows little. */
const FINEST = 1.5;

const nothing = () => {};

export function DoorScene(props: DoorSceneProps) {
  const { onFreeOrbit = nothing } = props;
  const camera = useRef<CameraHandle | null>(null);
  const onCamera = useCallback((handle: CameraHandle) => {
    camera.current = handle;
  }, []);
  const onKeyDown = (event: KeyboardEvent) => {
    const turn = event.ctrlKey || event.metaKey || event.altKey ? null : keyTurn(event.key);
    if (turn === null || camera.current === null) return;
    event.preventDefault();
    camera.current.key(turn);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for forms; this groups a picture with its keys.
    <div
      className="door-scene"
      role="group"
      aria-label="The door in three dimensions. Arrow keys turn the view, plus and minus zoom."
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned with the keyboard.
      tabIndex={0}
      onKeyDown={onKeyDown}
      style={{ position: "relative", width: "100%", height: "100%", overflow: "hidden" }}
    >
      <Canvas
        frameloop="demand"
        flat
        dpr={[1, FINEST]}
        shadows={{ type: PCFShadowMap }}
        gl={{ antialias: true, powerPreference: "high-performance" }}
        camera={{ fov: 26, near: 0.05, far: 20, position: [-1, 1, -2] }}
      >
        <Scene {...props} onFreeOrbit={onFreeOrbit} onCamera={onCamera} />
      </Canvas>
    </div>
  );
}

export default DoorScene;

interface SceneProps extends DoorSceneProps {
  readonly onFreeOrbit: () => void;
  readonly onCamera: (handle: CameraHandle) => void;
}

function Scene(props: SceneProps) {
  const { view, pinned, playhead, options, theme, angleScale = false, units = "metric" } = props;
  const { onHandle = nothing, onPick = nothing, onFreeOrbit, onCamera } = props;
  const layout = useMemo(() => layoutDoor(view.door, view.geometry), [view.door, view.geometry]);
  const look = useLook(theme);
  const [rig] = useState(createRig);
  const cut = cutPlace(options.camera, options.section, layout);
  const pick = onPick as (part: ScenePart) => void;
  const parts = useMemo(
    () => ({ view, layout, look, rig, units, cut, pick }),
    [view, layout, look, rig, units, cut, pick],
  );
  return (
    <SceneProvider value={parts}>
      <color attach="background" args={[look.palette.ground]} />
      <Light outdoors={options.camera === "outside"} shadows={cut === null} shadowSize={1024} />
      <Built options={options} />
      {options.animal && <Animal />}
      {pinned !== null && <Ghost pinned={pinned} />}
      {cut !== null && <SectionFaces x={cut} />}
      {options.section && options.camera === "latch" && <Dimensions x={0} />}
      {angleScale && <AngleScale />}
      <CoilSign />
      <CameraRig
        camera={options.camera}
        section={options.section}
        onFreeOrbit={onFreeOrbit}
        onReady={onCamera}
      />
      <Driver pinned={pinned} playhead={playhead} onHandle={onHandle} />
    </SceneProvider>
  );
}

/** Everything that a builder puts there. */
function Built({ options }: { readonly options: SceneOptions }) {
  const { magnetsThrough, camera } = options;
  return (
    <>
      <Floor />
      <Wall />
      <Frame />
      <Lamp />
      {camera !== "latch" && !magnetsThrough && <Cover />}
      <Hinge />
      <Flap through={magnetsThrough} />
      <Magnets through={magnetsThrough} />
      <Seal />
      <Latch />
    </>
  );
}

function useLook(theme: Theme) {
  const palette = usePalette(theme);
  const look = useMemo(() => createLook(palette), [palette]);
  useEffect(() => () => look.dispose(), [look]);
  return look;
}
