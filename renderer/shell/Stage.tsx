/** The largest thing: the door in 3D, or the pictures of its swing, or the comparison with the pinned copy. */
import { lazy, type ReactNode, Suspense, useCallback } from "react";
import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import type { Camera, SceneHandle, SceneOptions } from "../state/view.ts";
import { Compare } from "./Compare.tsx";
import { useTheme } from "./look.ts";
import { SlotBoundary } from "./SlotBoundary.tsx";
import type { StageView } from "./ui-store.ts";
import { usePage, useSettings, useUi, useWorkbench } from "./workbench.ts";

const DoorScene = lazy(() => import("../three/DoorScene.tsx"));
const plotsThere = import.meta.glob<{ default: React.ComponentType<import("../state/view.ts").PlotsProps> }>(
  "../plots/Plots.tsx",
);
const Plots = lazy(() => Object.values(plotsThere)[0]?.() ?? Promise.reject(new Error("not there")));

const VIEWS: readonly (readonly [StageView, string])[] = [
  ["door", "Door"],
  ["plots", "Swing"],
  ["compare", "Compare"],
];

const CAMERAS: readonly (readonly [Camera, string])[] = [
  ["side", "Side"],
  ["inside", "Inside"],
  ["outside", "Outside"],
  ["latch", "Latch"],
  ["free", "Free"],
];

export function Stage(): ReactNode {
  const stage = useUi((state) => state.stage);
  const view = usePage((state) => state.view);
  const older = usePage((state) => state.faults.length > 0);
  return (
    <section className="stage" aria-label="The door" data-older={older || undefined}>
      <StageTools />
      <div className="stage-picture">
        {view === null ? (
          <p className="stage-waiting">The door stands here once it is computed.</p>
        ) : (
          <SlotBoundary what={stage === "door" ? "The 3D door" : "The pictures"} key={stage}>
            <Suspense fallback={<p className="stage-waiting">Setting up…</p>}>
              {stage === "door" && <DoorSlot />}
              {stage === "plots" && <PlotsSlot />}
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
              title="Cut through the latch"
              on={scene.section}
              set={(section) => set({ section })}
            />
            <Toggle
              label="Magnets"
              title="See the magnets through the flap"
              on={scene.magnetsThrough}
              set={(magnetsThrough) => set({ magnetsThrough })}
            />
            <Toggle
              label="Animal"
              title="Show the animal"
              on={scene.animal}
              set={(animal) => set({ animal })}
            />
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
    <ToggleButton className="toggle" isSelected={on} onChange={set} aria-label={title}>
      {label}
    </ToggleButton>
  );
}

interface SegmentsProps<T extends string> {
  readonly label: string;
  readonly items: readonly (readonly [T, string])[];
  readonly value: T;
  readonly onChange: (value: T) => void;
}

function Segments<T extends string>({ label, items, value, onChange }: SegmentsProps<T>): ReactNode {
  return (
    <ToggleButtonGroup
      className="segments"
      aria-label={label}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[value]}
      onSelectionChange={(keys) => {
        const next = items.find(([id]) => keys.has(id));
        if (next !== undefined) onChange(next[0]);
      }}
    >
      {items.map(([id, title]) => (
        <ToggleButton key={id} id={id} className="segment">
          {title}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}

function DoorSlot(): ReactNode {
  const { playhead, scene, ui } = useWorkbench();
  const view = usePage((state) => state.view);
  const pinned = usePage((state) => state.pinned);
  const options = useUi((state) => state.scene);
  const theme = useTheme();
  const onHandle = useCallback(
    (handle: SceneHandle | null) => {
      scene.current = handle;
    },
    [scene],
  );
  const onFreeOrbit = useCallback(() => {
    const now = ui.getState().scene;
    if (now.camera !== "free") ui.setState({ scene: { ...now, camera: "free" } });
  }, [ui]);
  if (view === null) return null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys step the film here
    <div className="slot" tabIndex={0} role="img" aria-label={sceneWords(view.replay.outcome)} data-steps="">
      <DoorScene
        view={view}
        pinned={pinned}
        playhead={playhead}
        options={options}
        theme={theme}
        onHandle={onHandle}
        onFreeOrbit={onFreeOrbit}
      />
    </div>
  );
}

function sceneWords(outcome: string | null): string {
  const end = outcome === null ? "" : ` It ends ${outcome}.`;
  return `The door in 3D, replaying one passage.${end} Arrow keys step frame by frame.`;
}

function PlotsSlot(): ReactNode {
  const { playhead } = useWorkbench();
  const view = usePage((state) => state.view);
  const pinned = usePage((state) => state.pinned);
  const units = useSettings((state) => state.units);
  const theme = useTheme();
  if (view === null) return null;
  return <Plots view={view} pinned={pinned} playhead={playhead} theme={theme} units={units} />;
}
