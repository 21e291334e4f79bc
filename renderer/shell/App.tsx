/** The window: header, verdict, parts, stage, transport, strip, and the dialogs above them. */
import { lazy, type ReactNode, Suspense, useEffect } from "react";
import { PartsRail } from "../parts/PartsRail.tsx";
import { StationForm } from "../parts/StationForm.tsx";
import { isUnsaved } from "../state/page-store.ts";
import { DropTarget } from "./DropTarget.tsx";
import { Dialogs } from "./dialogs/Dialogs.tsx";
import { Header } from "./Header.tsx";
import { useKeys } from "./keys.ts";
import { useLook } from "./look.ts";
import { Said } from "./Said.tsx";
import { Stage } from "./Stage.tsx";
import { Strip } from "./Strip.tsx";
import { Transport } from "./Transport.tsx";
import { VerdictBand } from "./VerdictBand.tsx";
import { Welcome } from "./Welcome.tsx";
import { usePage, useUi, useWorkbench } from "./workbench.ts";

const Paper = lazy(() => import("../paper/Paper.tsx"));

export function App(): ReactNode {
  const there = usePage((state) => state.document !== null);
  useLook();
  useKeys();
  return (
    <div className="window">
      <ShellState />
      <div className="bench" data-empty={!there || undefined}>
        <Header />
        {there ? <Bench /> : <Welcome />}
      </div>
      <PaperPlace />
      <Dialogs />
      <DropTarget />
      <Said />
    </div>
  );
}

function PaperPlace(): ReactNode {
  const open = useUi((state) => state.paper !== null);
  if (!open) return null;
  return (
    <Suspense fallback={null}>
      <Paper />
    </Suspense>
  );
}

function Bench(): ReactNode {
  return (
    <>
      <main className="main" data-region="stage">
        <VerdictBand />
        <Stage />
        <Transport />
      </main>
      <section className="strip-place" aria-label="The passage in time" data-region="strip">
        <Strip />
      </section>
      <aside className="parts" aria-label="Parts of the door" data-region="parts">
        <PartsRail />
        <StationForm />
      </aside>
    </>
  );
}

/**
 * Tells the shell what its menu and its closing question need to know, and the window's title. Shows nothing: by itself, because it
 * hears of every step, and nothing else here needs to.
 */
function ShellState(): ReactNode {
  const { bridge } = useWorkbench();
  const undoName = usePage(({ history }) => history.done[history.done.length - 1]?.name ?? null);
  const redoName = usePage(({ history }) => history.undone[history.undone.length - 1]?.name ?? null);
  const name = usePage(({ document }) => document?.name ?? null);
  const unsaved = usePage(isUnsaved);
  useEffect(() => bridge.setMenuState({ undo: undoName, redo: redoName }), [bridge, undoName, redoName]);
  useEffect(() => bridge.setUnsaved(unsaved), [bridge, unsaved]);
  useEffect(() => {
    document.title = name === null ? "Swingstill" : `${unsaved ? "• " : ""}${name} – Swingstill`;
  }, [name, unsaved]);
  return null;
}
