/** The trial on the bench: what was written and loaded, what to expect, and what it tells. The newest entry wins. */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { SampledLimits } from "../../core/sheet/bench-limits.ts";
import type { Fit } from "../../core/study/fit/fit-types.ts";
import type { Expected, FitAnswer, FitOrder } from "../worker/fit-messages.ts";
import { type Page, textOf } from "./page-store.ts";
import { NO_STEPS, type Stepped, stepBack, stepForth, stepOf, type TrialHistory } from "./trial-history.ts";
import { createTrialKeeper, type TrialShelf } from "./trial-keeper.ts";
import { NO_TEXTS, type TrialField, type TrialReadings, type TrialTexts } from "./trial-readings.ts";
import { isNothing, type MeasuredFile, type Measurements, NOTHING_MEASURED } from "./trial-record.ts";

export type { MeasuredFile } from "./trial-record.ts";

/** The part of a Worker that is needed here. */
export interface FitPort {
  postMessage(order: FitOrder): void;
  terminate(): void;
  onmessage: ((event: { data: FitAnswer }) => void) | null;
  onerror: ((event: { message: string }) => void) | null;
}

export interface FoundFit {
  /** The door file's text it is of. */
  readonly text: string;
  readonly fit: Fit;
  /** Lines of the file without a reading. */
  readonly gaps: number;
}

export interface TrialState {
  readonly texts: TrialTexts;
  readonly file: MeasuredFile | null;
  /** Why the file, or the door, could not be read. */
  readonly reasons: readonly string[];
  readonly running: boolean;
  readonly readings: TrialReadings;
  readonly expected: Expected | null;
  /** Of the door at hand, from the bench card's let-go. */
  readonly limits: SampledLimits | null;
  readonly found: FoundFit | null;
  /** The door file's text once what was found is in it. */
  readonly placed: string | null;
  readonly history: TrialHistory;
  /** Why the readings are not kept, or could not be brought back; "" where all is well. */
  readonly trouble: string;
}

export interface Trials {
  readonly store: StoreApi<TrialState>;
  /** `name`: of the field, for undo. */
  write(field: TrialField, text: string, name?: string): void;
  load(file: MeasuredFile | null): void;
  /** Takes out everything that was measured. */
  clear(): void;
  undo(): void;
  redo(): void;
  /** The field was left: what is written in it next is a step of its own. */
  endGesture(): void;
  /** Brings everything up to the door at hand. */
  follow(): void;
  cancel(): void;
  /** Nobody looks any more. */
  leave(): void;
  /** What was found stands in the door: its text now. */
  place(text: string): void;
}

const EMPTY: TrialState = {
  texts: NO_TEXTS,
  file: null,
  reasons: [],
  running: false,
  readings: { values: {}, faults: {} },
  expected: null,
  limits: null,
  found: null,
  placed: null,
  history: NO_STEPS,
  trouble: "",
};

/** Typing pauses this long before a fit starts, ms. */
const PAUSE = 300;

export function createTrials(page: Page, shelf: TrialShelf, start: () => FitPort): Trials {
  const store = createStore<TrialState>(() => EMPTY);
  const { getState: get, setState: set } = store;
  let port: FitPort | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let limitsOf: string | null = null;
  let watched = false;

  const end = (): void => {
    clearTimeout(timer);
    if (port !== null) {
      port.onmessage = null;
      port.terminate();
    }
    port = null;
  };
  const stop = (reasons: readonly string[]): void => {
    end();
    set({ running: false, reasons });
  };
  const hear = (text: string, answer: FitAnswer): void => {
    if (answer.kind === "expected") set({ expected: answer.expected, readings: answer.readings });
    else if (answer.kind === "fit") set({ found: { text, fit: answer.fit, gaps: answer.gaps } });
    else if (answer.kind === "limits") {
      limitsOf = text;
      set({ limits: answer.limits });
    } else if (answer.kind === "unreadable") set({ reasons: answer.reasons, found: null });
    else if (answer.kind === "done") stop(get().reasons);
    else stop(answer.reasons);
  };
  const send = (): void => {
    const text = textOf(page.store.getState());
    const { texts, file, placed } = get();
    // What was found is in the door already: only what to expect of it is new.
    const fit = placed !== text;
    const limits = limitsOf !== text;
    if (limits) set({ limits: null });
    set({ reasons: [] });
    let told = !fit;
    port = start();
    port.onmessage = ({ data }) => {
      told ||= data.kind === "fit";
      if (data.kind === "done" && !told) set({ found: null });
      hear(text, data);
    };
    port.onerror = ({ message }) => stop([message]);
    port.postMessage({ text, texts, csv: file?.text ?? null, fit, limits });
  };
  const ask = (): void => {
    end();
    set({ running: true });
    timer = setTimeout(send, PAUSE);
  };

  const measuredNow = (): Measurements => ({ texts: get().texts, file: get().file });
  /** Puts what was measured in place of what stood there. */
  const take = (measured: Measurements, history: TrialHistory): void => {
    const sameFile = measured.file === get().file;
    set({ ...measured, history, placed: null, ...(sameFile ? {} : { found: null }) });
    keeper.changed();
    ask();
  };
  const step = (stepped: Stepped | null): void => {
    if (stepped !== null) take(stepped.measured, stepped.history);
  };
  const change = (measured: Measurements, name: string, gesture: string | null): void =>
    take(measured, stepOf(get().history, name, measuredNow(), gesture));

  const keeper = createTrialKeeper(page, shelf, {
    now: measuredNow,
    anew: () => {
      end();
      limitsOf = null;
      set(EMPTY);
    },
    found: (measured) => {
      set(measured);
      if (watched) ask();
    },
    trouble: (trouble) => set({ trouble }),
  });

  return {
    store,
    write: (field, text, name = field) =>
      change({ ...measuredNow(), texts: { ...get().texts, [field]: text } }, name, field),
    load: (file) => change({ ...measuredNow(), file }, "the table", null),
    clear: () => {
      if (!isNothing(measuredNow())) change(NOTHING_MEASURED, "all readings", null);
    },
    undo: () => step(stepBack(get().history, measuredNow())),
    redo: () => step(stepForth(get().history, measuredNow())),
    endGesture: () => set({ history: { ...get().history, gesture: null } }),
    follow: () => {
      watched = true;
      ask();
    },
    cancel: () => stop([]),
    leave: () => {
      watched = false;
      stop([]);
    },
    place: (text) => set({ placed: text }),
  };
}
