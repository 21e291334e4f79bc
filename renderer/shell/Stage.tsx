/** The largest thing: the door in 3D, or the pictures of its swing, or the comparison with the pinned copy. */
import { lazy, memo, type ReactNode, Suspense, useCallback } from "react";
import { ToggleButton } from "react-aria-components";
import type { StationId } from "../parts/stations.ts";
import type { Camera, DoorView, SceneOptions } from "../state/view.ts";
import type { DoorSceneHandle, ScenePart } from "../three/scene-props.ts";
import { Segments } from "../ui/Segments.tsx";
import { Compare } from "./Compare.tsx";
import { useTheme } from "./look.ts";
import { useNextFrame } from "./next-frame.ts";
import { SlotBoundary } from "./SlotBoundary.tsx";
import type { StageView } from "./ui-store.ts";
import { usePage, useSettings, useUi, useWorkbench } from "./workbench.ts";

const DoorScene = memo(lazy(() => import("../three/DoorScene.tsx")));
const Plots = memo(lazy(() => import("../plots/Plots.tsx")));
const Study = lazy(() => import("./Study.tsx").then(({ Study }) => ({ default: Study })));

const VIEWS: readonly (readonly [StageView, string])[] = [
  ["door", "Door"],
  ["plots", "Swing"],
  ["study", "Study"],
  ["compare", "Compare"],
];

const STAGE_TITLES: Readonly<Record<StageView, string>> = {
  door: "The door",
  plots: "The swing in pictures",
  study: "Studies",
  compare: "Comparison with the pinned copy",
};

/** Turning the view by hand is the free one from then on. */
const CAMERAS: readonly (readonly [Camera, string])[] = [
  ["side", "Side"],
  ["inside", "Inside"],
  ["outside", "Outside"],
  ["latch", "Latch"],
  ["free", "Free"],
];

export function Stage(): ReactNode {
  const stage = useUi((state) => state.stage);
  const there = usePage((state) => state.view !== null);
  const older = usePage((state) => state.faults.length > 0);
  return (
    <section className="stage" aria-labelledby="stage-title" data-older={older || undefined}>
      <h2 id="stage-title" className="unseen">
        {STAGE_TITLES[stage]}
      </h2>
      <StageTools />
      <div className="stage-picture">
        {!there ? (
          <p className="stage-waiting">The door stands here once it is computed.</p>
        ) : (
          <SlotBoundary what={stage === "door" ? "The 3D door" : "The pictures"} key={stage}>
            <Suspense fallback={<p className="stage-waiting">Setting up…</p>}>
              {stage === "door" && <DoorSlot />}
              {stage === "plots" && <PlotsSlot />}
              {stage === "study" && <Study />}
              {stage === "compare" && <Compare />}
            </Suspense>
          </SlotBoundary>
        )}
      </div>
    </section>
  );
}

function StageTools(): ReactNode {
  const { ui } = useWorkbench();
  const stage = useUi((state) => state.stage);
  const scene = useUi((state) => state.scene);
  const angleScale = useUi((state) => state.angleScale);
  const set = (change: Partial<SceneOptions>) => ui.setState({ scene: { ...scene, ...change } });
  return (
    <div className="stage-tools">
      <Segments
        label="What is shown"
        items={VIEWS}
        value={stage}
        onChange={(to) => ui.setState({ stage: to })}
      />
      {stage === "door" && (
        <>
          <Segments
            label="Standpoint"
            items={CAMERAS}
            value={scene.camera}
            onChange={(camera) => set({ camera })}
          />
          <div className="toggles">
            <Toggle
              label="Section"
              title="cut through the latch"
              on={scene.section}
              set={(section) => set({ section })}
            />
            <Toggle
              label="Magnets"
              title="seen through the flap"
              on={scene.magnetsThrough}
              set={(magnetsThrough) => set({ magnetsThrough })}
            />
            <Toggle
              label="Angles"
              title="shown at the hinge"
              on={angleScale}
              set={(on) => ui.setState({ angleScale: on })}
            />
            <Toggle label="Animal" title="shown" on={scene.animal} set={(animal) => set({ animal })} />
          </div>
        </>
      )}
    </div>
  );
}

function Toggle({
  label,
  title,
  on,
  set,
}: {
  label: string;
  title: string;
  on: boolean;
  set: (on: boolean) => void;
}): ReactNode {
  return (
    <ToggleButton className="toggle" isSelected={on} onChange={set} aria-label={`${label}: ${title}`}>
      {label}
    </ToggleButton>
  );
}

/** Where a click on a part leads. */
const STATION_OF: Readonly<Record<ScenePart, StationId>> = {
  animals: "animals",
  opening: "opening",
  flap: "flap",
  hinge: "hinge",
  seal: "hinge",
  magnets: "magnets",
  latch: "latch",
  solenoid: "solenoid",
};

/** The view for a picture: what is said and drawn in few strokes comes first, the picture in the next frame. */
function usePictured(): DoorView | null {
  return useNextFrame(usePage((state) => state.view));
}

function DoorSlot(): ReactNode {
  const { playhead, scene, ui } = useWorkbench();
  const view = usePictured();
  const pinned = usePage((state) => state.pinned);
  const options = useUi((state) => state.scene);
  const angleScale = useUi((state) => state.angleScale);
  const units = useSettings((state) => state.units);
  const theme = useTheme();
  const onHandle = useCallback(
    (handle: DoorSceneHandle | null) => {
      scene.current = handle;
    },
    [scene],
  );
  const onFreeOrbit = useCallback(() => {
    const now = ui.getState().scene;
    if (now.camera !== "free") ui.setState({ scene: { ...now, camera: "free" } });
  }, [ui]);
  const onPick = useCallback((part: ScenePart) => ui.setState({ station: STATION_OF[part] }), [ui]);
  if (view === null) return null;
  return (
    <div className="slot">
      <DoorScene
        view={view}
        pinned={pinned}
        playhead={playhead}
        options={options}
        theme={theme}
        units={units}
        angleScale={angleScale}
        onHandle={onHandle}
        onFreeOrbit={onFreeOrbit}
        onPick={onPick}
      />
    </div>
  );
}

function PlotsSlot(): ReactNode {
  const { playhead, bridge } = useWorkbench();
  const view = usePictured();
  const pinned = usePage((state) => state.pinned);
  const units = useSettings((state) => state.units);
  const theme = useTheme();
  if (view === null) return null;
  return (
    <Plots
      save={bridge.saveBytes}
      view={view}
      pinned={pinned}
      playhead={playhead}
      theme={theme}
      units={units}
    />
  );
}
