/** The passage strip's place, and what a drag of the hold's end does to the door. */
import { lazy, type ReactNode, Suspense, useCallback } from "react";
import { changeEntries } from "../state/entries.ts";
import { holdChanges } from "../state/hold.ts";
import { isSettled } from "../state/page-store.ts";
import { useTheme } from "./look.ts";
import { SlotBoundary } from "./SlotBoundary.tsx";
import { usePage, useWorkbench } from "./workbench.ts";

const PassageStrip = lazy(() => import("../strip/PassageStrip.tsx"));

export function Strip(): ReactNode {
  const { page, playhead } = useWorkbench();
  const view = usePage((state) => state.view);
  const pinned = usePage((state) => state.pinned);
  const study = usePage((state) => (state.study?.text === state.view?.text ? state.study : null));
  const theme = useTheme();
  const onHoldPreview = useCallback((hold: number) => page.actions.tryHold(hold), [page]);
  const onHoldCancel = useCallback(() => page.actions.tryHold(null), [page]);
  const onHoldCommit = useCallback(
    (hold: number) => {
      const { timer } = page.store.getState().view?.door ?? {};
      if (timer === undefined || timer === null) return;
      const { name, changes } = holdChanges(timer, hold);
      page.actions.commitHold((file) => changeEntries(name, file, changes));
    },
    [page],
  );
  const settled = useCallback(() => isSettled(page.store.getState()), [page]);
  if (view === null) return null;
  return (
    <SlotBoundary what="The strip">
      <Suspense fallback={null}>
        <PassageStrip
          view={view}
          pinned={pinned}
          playhead={playhead}
          theme={theme}
          study={study}
          onHoldPreview={onHoldPreview}
          onHoldCommit={onHoldCommit}
          onHoldCancel={onHoldCancel}
          isSettled={settled}
        />
      </Suspense>
    </SlotBoundary>
  );
}
