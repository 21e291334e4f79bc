/**
 * The door in a wall, as built and as it swings: replays a computed passage from the shared playhead.
 * Levels: `layout/` measures to places · `motion/` replay to poses · `shape/`, `look/` geometry and materials · `parts/` one
 * component per subject · `camera/` standpoints · `export/` pictures and films · this.
 */
import "./look/console.ts";
import { Canvas, useThree } from "@react-three/fiber";
import { memo, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { BasicShadowMap, PCFShadowMap } from "three";
import { useStore } from "zustand";
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Camera, Theme } from "../state/view.ts";
import { type CameraHandle, CameraRig } from "./camera/CameraRig.tsx";
import { keyTurn } from "./camera/keys.ts";
import { cutPlace } from "./camera/standpoints.ts";
import { type DoorLayout, layoutDoor } from "./layout/layout.ts";
import { latchPlace } from "./layout/section.ts";
import { floorDepth } from "./layout/wall.ts";
import { createLook } from "./look/look.ts";
import { findQuality, type Quality } from "./look/quality.ts";
import { usePalette, useTypeReady } from "./look/use-palette.ts";
import { createPace } from "./motion/pace.ts";
import { createRig } from "./motion/rig.ts";
import { AngleScale } from "./parts/AngleScale.tsx";
import { Animal } from "./parts/Animal.tsx";
import { SceneProvider, useShared } from "./parts/context.ts";
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

const nothing = () => {};

export function DoorScene(props: DoorSceneProps) {
  const { onFreeOrbit = nothing } = props;
  const [quality] = useState(findQuality);
  const camera = useRef<CameraHandle | null>(null);
  const onCamera = useCallback((handle: CameraHandle) => {
    camera.current = handle;
  }, []);
  if (quality === null) {
    return <p role="alert">This browser draws nothing in three dimensions: WebGL 2 is off or not there.</p>;
  }
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for forms; this groups a picture with its keys.
    <div
      role="group"
      aria-label="The door in three dimensions. Arrow keys turn the view, plus and minus come nearer and go away."
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned with the keyboard.
      tabIndex={0}
      onKeyDown={(event) => {
        const turn = keyTurn(event);
        if (turn === null || camera.current === null) return;
        event.preventDefault();
        camera.current.key(turn);
      }}
      style={FILLING}
    >
      <Picture {...props} quality={quality} onFreeOrbit={onFreeOrbit} onCamera={onCamera} />
    </div>
  );
}

export default DoorScene;

const FILLING = { position: "relative", width: "100%", height: "100%", overflow: "hidden" } as const;

interface SceneProps extends DoorSceneProps {
  readonly quality: Quality;
  readonly onFreeOrbit: () => void;
  readonly onCamera: (handle: CameraHandle) => void;
}

/** What is shown reaches the scene past its canvas: rendered again, a canvas sets its density and all else anew. */
function Picture(props: SceneProps) {
  const [link] = useState(() => createStore<SceneProps>(() => props));
  useLayoutEffect(() => link.setState(props, true));
  return <Setting quality={props.quality} link={link} />;
}

interface SettingProps {
  readonly quality: Quality;
  readonly link: StoreApi<SceneProps>;
}

const Setting = memo(function Setting({ quality, link }: SettingProps) {
  return (
    <Canvas
      frameloop="demand"
      flat
      dpr={quality.moving}
      shadows={{ type: quality.fine ? PCFShadowMap : BasicShadowMap }}
      gl={{ antialias: quality.fine, powerPreference: "high-performance" }}
      camera={{ fov: 26, near: 0.05, far: 20, position: [-1, 1, -2] }}
    >
      <Linked link={link} />
    </Canvas>
  );
});

function Linked({ link }: { readonly link: StoreApi<SceneProps> }) {
  return <Scene {...useStore(link)} />;
}

function Scene(props: SceneProps) {
  const { view, pinned, playhead, options, theme, angleScale = false, units = "metric" } = props;
  const { onHandle = nothing, onPick = nothing, onCamera, quality } = props;
  const { door, geometry } = view;
  const layout = useShared(useMemo(() => layoutDoor(door, geometry), [door, geometry]));
  const look = useLook(theme, quality.fine);
  const [rig] = useState(createRig);
  const touch = usePace(quality);
  const typeReady = useTypeReady();
  const { stand, onFreeOrbit } = useStand(options.camera, props.onFreeOrbit);
  const cut = cutPlace(stand, options.section, layout);
  const { direction } = view.replay;
  const sunOutdoors = stand === "outside" || (stand === "free" && direction === 1);
  /** The latch alone, large: an animal would only be in the way. */
  const closeCut = options.section && stand === "latch";
  const pick = onPick as (part: ScenePart) => void;
  const { hingeHeight, latch } = layout;
  const parts = useMemo(
    () => ({ hingeHeight, look, rig, typeReady, units, cut, touch, pick }),
    [hingeHeight, look, rig, typeReady, units, cut, touch, pick],
  );
  return (
    <SceneProvider value={parts}>
      <color attach="background" args={[look.palette.ground]} />
      <Light bounds={layout.wall.bounds} outdoors={sunOutdoors} shadows={cut === null && stand !== "latch"} />
      <Built layout={layout} through={options.magnetsThrough} covered={stand !== "latch"} />
      {options.animal && !closeCut && (
        <Animal
          animal={door.animals[geometry.animal]}
          sill={layout.opening.bottom}
          floor={floorDepth(door, layout.reach)}
        />
      )}
      {pinned !== null && <Ghost pinned={pinned} />}
      {cut !== null && <SectionFaces layout={layout} x={cut} />}
      {closeCut && door.latch !== null && latch !== null && (
        <Dimensions latch={door.latch} placed={latch} x={0} />
      )}
      {angleScale && <AngleScale layout={layout} geometry={geometry} stop={door.hinge.stopAngle} />}
      {latch !== null && <CoilSign mouth={latchPlace(layout, latch).mouth} />}
      <CameraRig
        layout={layout}
        direction={direction}
        camera={options.camera}
        section={options.section}
        onFreeOrbit={onFreeOrbit}
        onReady={onCamera}
      />
      <Driver view={view} pinned={pinned} playhead={playhead} quality={quality} onHandle={onHandle} />
    </SceneProvider>
  );
}

function usePace(quality: Quality): () => void {
  const get = useThree((state) => state.get);
  const pace = useMemo(
    () =>
      createPace(quality, {
        density: () => get().viewport.dpr,
        setDensity: (density) => get().setDpr(density),
        draw: () => get().invalidate(),
      }),
    [quality, get],
  );
  useEffect(() => pace.stop, [pace]);
  return pace.touch;
}

/** The standpoint last chosen: what is cut and lit for it stays so while the person turns the view from there by hand. */
function useStand(camera: Camera, onFreeOrbit: () => void) {
  const [stand, setStand] = useState(camera);
  const byHand = useRef(false);
  if (camera !== "free") byHand.current = false;
  if (!byHand.current && camera !== stand) setStand(camera);
  const turned = useCallback(() => {
    byHand.current = true;
    onFreeOrbit();
  }, [onFreeOrbit]);
  return { stand, onFreeOrbit: turned };
}

interface BuiltProps {
  readonly layout: DoorLayout;
  readonly through: boolean;
  readonly covered: boolean;
}

/** Everything that a builder puts there. */
const Built = memo(function Built({ layout, through, covered }: BuiltProps) {
  const { wall, frame, hinge, plate, weights, magnets, seal, latch } = layout;
  return (
    <>
      <Floor wall={wall} />
      <Wall wall={wall} />
      <Frame frame={frame} />
      <Lamp lamps={frame.lamps} />
      {covered && !through && <Cover cover={wall.cover} />}
      <Hinge hinge={hinge} />
      <Flap plate={plate} weights={weights} through={through} />
      <Magnets magnets={magnets} through={through} />
      <Seal seal={seal} />
      <Latch latch={latch} />
    </>
  );
});

function useLook(theme: Theme, fine: boolean) {
  const palette = usePalette(theme);
  const look = useMemo(() => createLook(palette, fine), [palette, fine]);
  useEffect(() => () => look.dispose(), [look]);
  return look;
}
