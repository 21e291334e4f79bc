/** The page's start: puts the parts together and shows a door. */
import "@fontsource-variable/figtree/wght.css";
import "./theme/tokens.css";
import "./theme/base.css";
import "./theme/bench.css";
import "./theme/parts.css";
import "./theme/overlays.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { surroundings } from "./bridge/index.ts";
import { FIRST_EXAMPLE } from "./examples.ts";
import { App } from "./shell/App.tsx";
import { createCommands } from "./shell/commands.ts";
import { systemIsDark } from "./shell/look.ts";
import { createUi } from "./shell/ui-store.ts";
import { type Workbench, WorkbenchContext } from "./shell/workbench.ts";
import { type AdvicePort, adviseOn } from "./state/adviser.ts";
import { type Asker, createDocuments } from "./state/documents.ts";
import { drivePlayhead } from "./state/drive.ts";
import { createEngine, type Port } from "./state/engine.ts";
import { followFilm } from "./state/follow-film.ts";
import { createMaps, type MapPort } from "./state/maps.ts";
import { createPage } from "./state/page-store.ts";
import { createPlayhead } from "./state/playhead.ts";
import { createSettings, type Shelf } from "./state/settings.ts";
import { createStudies } from "./state/studies.ts";
import type { StudyPort } from "./state/study-run.ts";
import { createTrials, type FitPort } from "./state/trials.ts";

/** Reaching for a forbidden localStorage throws by itself. */
function shelf(): Shelf {
  try {
    return window.localStorage;
  } catch {
    return { getItem: () => null, setItem: () => {} };
  }
}

function startWorker(): Worker {
  return new Worker(new URL("./worker/door-worker.ts", import.meta.url), { type: "module" });
}

function startStudy(): StudyPort {
  const worker = new Worker(new URL("./worker/study-worker.ts", import.meta.url), { type: "module" });
  return worker as unknown as StudyPort;
}

function startMap(): MapPort {
  const worker = new Worker(new URL("./worker/map-worker.ts", import.meta.url), { type: "module" });
  return worker as unknown as MapPort;
}

function startFit(): FitPort {
  const worker = new Worker(new URL("./worker/fit-worker.ts", import.meta.url), { type: "module" });
  return worker as unknown as FitPort;
}

/** One thread is left to the page. */
const STUDY_THREADS = Math.max(1, Math.min(8, navigator.hardwareConcurrency - 1));

function assemble(): Workbench {
  const bridge = surroundings();
  const page = createPage(createEngine(() => startWorker() as unknown as Port));
  const settings = createSettings(shelf());
  const ui = createUi();
  const studies = createStudies(page, startStudy, STUDY_THREADS);
  const maps = createMaps(page, startMap, STUDY_THREADS);
  const trials = createTrials(page, bridge, startFit);
  const playhead = createPlayhead();
  const scene = { current: null };
  const asker: Asker = {
    unsaved: (name) => new Promise((answer) => ui.setState({ dialog: { kind: "unsaved", name, answer } })),
    tell: (title, reasons) => ui.setState({ dialog: { kind: "notice", title, reasons } }),
  };
  const documents = createDocuments(page, bridge, asker);
  const commands = createCommands({ page, documents, settings, ui, playhead, bridge, scene, systemIsDark });
  return { page, documents, settings, ui, studies, maps, trials, playhead, bridge, commands, scene };
}

/** ms. */
const LOOK_AGAIN = 3000;

/** A door opened from outside comes first, then unsaved work, then the first example. */
async function showFirst({ documents, page, ui, bridge }: Workbench): Promise<void> {
  bridge.onOpenFile((door) => void documents.openFile(door));
  documents.keepCopies();
  if (page.store.getState().document === null && FIRST_EXAMPLE !== undefined) {
    await documents.startFrom(FIRST_EXAMPLE.id, FIRST_EXAMPLE.text);
  }
  const offer = async (): Promise<boolean> => {
    const found = await documents.leftovers();
    if (found.length > 0) ui.setState({ dialog: { kind: "recovery", found } });
    return found.length > 0;
  };
  // A page that ended a moment ago may still count as living: look once more.
  if (!(await offer())) setTimeout(() => void offer(), LOOK_AGAIN);
}

const place = document.getElementById("root");
if (place === null) throw new Error("the page has no element with the id root");

const workbench = assemble();
const { bridge, commands, documents, page, playhead, settings } = workbench;
bridge.onMenuCommand((command) => commands.run(command));
bridge.onSaveBeforeClosing(() => documents.save());
drivePlayhead(playhead, window);
followFilm(page.store, playhead, !window.matchMedia("(prefers-reduced-motion: reduce)").matches);
page.actions.setUnits(settings.getState().units);
settings.subscribe(({ units }) => page.actions.setUnits(units));
adviseOn(page, () => startWorker() as unknown as AdvicePort);
void showFirst(workbench);

createRoot(place).render(
  <StrictMode>
    <WorkbenchContext value={workbench}>
      <App />
    </WorkbenchContext>
  </StrictMode>,
);
