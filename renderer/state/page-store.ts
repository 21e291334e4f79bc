/**
 * The page's state: the door at hand with its file, the steps taken, and the last view computed. All changes go through
 * the actions here; the parts of the page subscribe to what they show. No React in here.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { DoorFault } from "../../core/door/fault.ts";
import { type DoorFile, writeDoor } from "../../core/door/file.ts";
import type { Finding } from "../../core/review/finding.ts";
import type { FileToken } from "../../electron/bridge.ts";
import {
  type Changed,
  type Command,
  endGesture,
  type History,
  NO_HISTORY,
  redo,
  run,
  undo,
} from "./command.ts";
import type { Answer, Engine } from "./engine.ts";
import { sharing } from "./share.ts";
import type { DoorView, StudyView, UnitSystem } from "./view.ts";

/** The door at hand. */
export interface OpenDocument {
  /** Names its recovery copy. */
  readonly id: string;
  readonly file: DoorFile;
  /** File name, or the name it would be saved under. */
  readonly name: string;
  readonly token: FileToken | null;
  /** Text as last opened or saved: anything else is unsaved work. `null`: never saved, and not to be lost. */
  readonly saved: string | null;
}

export interface PageState {
  readonly document: OpenDocument | null;
  readonly history: History;
  /** The last view that could be computed; it may be of an older text. */
  readonly view: DoorView | null;
  /** What is wrong with the present text; the view is then of an older one. */
  readonly faults: readonly DoorFault[];
  /** The answer for the present text is not there yet. */
  readonly working: boolean;
  /** The computation broke. */
  readonly failed: string | null;
  /** A hold being tried by dragging, s. */
  readonly trying: number | null;
  /** The copy set aside for comparison. */
  readonly pinned: DoorView | null;
  readonly study: StudyView | null;
  /** Of the figures in sentences. */
  readonly units: UnitSystem;
  /** Findings with their ways out, once they are worked out. */
  readonly advice: Advice | null;
}

export interface Advice {
  readonly text: string;
  readonly units: UnitSystem;
  readonly findings: readonly Finding[];
}

export interface PageActions {
  /** Puts a document in place of the one at hand; its history starts anew. */
  show(document: OpenDocument): void;
  /** Carries out a change as one step; changes of one gesture make one step together. */
  change(make: (file: DoorFile) => Command, gesture?: string): void;
  endGesture(): void;
  undo(): void;
  redo(): void;
  /** The document was written to a file. */
  saved(name: string, token: FileToken | null, text: string): void;
  tryHold(hold: number | null): void;
  /** The dragged hold is let go: one step. */
  commitHold(make: (file: DoorFile) => Command): void;
  pin(): void;
  unpin(): void;
  setStudy(study: StudyView | null): void;
  setUnits(units: UnitSystem): void;
  setAdvice(advice: Advice): void;
}

export interface Page {
  readonly store: StoreApi<PageState>;
  readonly actions: PageActions;
}

const NO_FAULTS: readonly DoorFault[] = [];

const EMPTY: PageState = {
  document: null,
  history: NO_HISTORY,
  view: null,
  faults: NO_FAULTS,
  working: false,
  failed: null,
  trying: null,
  pinned: null,
  study: null,
  units: "metric",
  advice: null,
};

/** A file never changes, and its text is asked for by everyone at every change of the state. */
const TEXTS = new WeakMap<DoorFile, string>();

/** The text that would be saved now; "" without a door. */
export function textOf({ document }: PageState): string {
  if (document === null) return "";
  const known = TEXTS.get(document.file);
  if (known !== undefined) return known;
  const text = writeDoor(document.file);
  TEXTS.set(document.file, text);
  return text;
}

export function isUnsaved(state: PageState): boolean {
  return state.document !== null && state.document.saved !== textOf(state);
}

/** The view is not of the text at hand: a wrong entry stands in the way, or the answer is still to come. */
export function isOlder(state: PageState): boolean {
  return state.view !== null && state.view.text !== textOf(state);
}

/** The view answers what is asked now. */
export function isSettled(state: PageState): boolean {
  return !state.working && !isOlder(state);
}

const NONE: readonly Finding[] = [];

/** The findings of the view, with their ways out where those are there. */
export function findingsOf({ view, advice, units }: PageState): readonly Finding[] {
  const fits = advice !== null && advice.text === view?.text && advice.units === units;
  return fits ? advice.findings : (view?.findings ?? NONE);
}

export function createPage(engine: Engine): Page {
  const store = createStore<PageState>(() => EMPTY);
  const { getState: get, setState: set } = store;

  const ask = (): void => {
    const state = get();
    if (state.document === null) return;
    if (!state.working) set({ working: true });
    engine.ask({ text: textOf(state), hold: state.trying, units: state.units });
  };
  const take = (changed: Changed | null): void => {
    const { document } = get();
    if (document === null || changed === null) return;
    const { file, history } = changed;
    if (file === document.file) set({ history });
    else {
      // All at once: everyone who listens is told once.
      set({ history, document: { ...document, file }, working: true });
      ask();
    }
  };

  engine.onAnswer((answer) => set(answered(get(), answer)));

  const actions: PageActions = {
    show(document) {
      set({ ...EMPTY, document, pinned: get().pinned, units: get().units });
      ask();
    },
    change(make, gesture) {
      const { document, history } = get();
      if (document === null) return;
      take(run(history, document.file, make(document.file), gesture ?? null));
    },
    endGesture: () => set({ history: endGesture(get().history) }),
    undo() {
      const { document, history } = get();
      if (document !== null) take(undo(history, document.file));
    },
    redo() {
      const { document, history } = get();
      if (document !== null) take(redo(history, document.file));
    },
    saved(name, token, text) {
      const { document } = get();
      if (document !== null) set({ document: { ...document, name, token, saved: text } });
    },
    tryHold(hold) {
      if (get().trying === hold) return;
      set({ trying: hold });
      ask();
    },
    commitHold(make) {
      set({ trying: null });
      const before = get().document;
      actions.change(make);
      // Dragged back to where it was: no step, but the view still shows another hold.
      if (get().document === before) ask();
    },
    pin: () => set({ pinned: get().view }),
    unpin: () => set({ pinned: null }),
    setStudy: (study) => set({ study }),
    setAdvice: (advice) =>
      set({ advice: { ...advice, findings: sharing(findingsOf(get()), advice.findings) } }),
    setUnits(units) {
      if (get().units === units) return;
      set({ units });
      ask();
    },
  };
  return { store, actions };
}

/** What an answer changes; one for a text that is no longer at hand shows the way there but settles nothing. */
function answered(state: PageState, answer: Answer): Partial<PageState> {
  const current = answer.question.text === textOf(state);
  const settles = current && answer.question.hold === state.trying && answer.question.units === state.units;
  const working = settles ? false : state.working;
  if (answer.kind === "view") {
    const view = sharing(state.view, answer.view);
    return current ? { view, faults: NO_FAULTS, failed: null, working } : { view, working };
  }
  if (!current) return {};
  if (answer.kind === "faults") return { faults: answer.faults, failed: null, working };
  return { failed: answer.message, working };
}
