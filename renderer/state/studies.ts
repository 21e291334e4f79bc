/** The page's one study: what runs, how far it is, and what came of it. A change of the door cuts it short. */
import { createStore, type StoreApi } from "zustand/vanilla";
import { DEFAULT_SEED } from "../../core/study/request.ts";
import { type Page, textOf } from "./page-store.ts";
import { runStudy, type StudyPort } from "./study-run.ts";

export interface StudyState {
  /** 0 to 1 while it runs; `null` while none does. */
  readonly progress: number | null;
  /** Why the last one gave no answer. */
  readonly reasons: readonly string[];
}

export interface Studies {
  readonly store: StoreApi<StudyState>;
  run(samples: number): void;
  cancel(): void;
}

export function createStudies(page: Page, start: () => StudyPort, threads: number): Studies {
  const store = createStore<StudyState>(() => ({ progress: null, reasons: [] }));
  let end: (() => void) | null = null;
  let runsFor = "";

  const stop = (reasons: readonly string[] = []): void => {
    end?.();
    end = null;
    store.setState({ progress: null, reasons });
  };
  page.store.subscribe((state) => {
    if (end !== null && textOf(state) !== runsFor) stop(["The door was changed, so the study was stopped."]);
  });

  return {
    store,
    run(samples) {
      stop();
      const text = textOf(page.store.getState());
      runsFor = text;
      store.setState({ progress: 0 });
      end = runStudy(
        start,
        { text, samples, seed: DEFAULT_SEED, threads },
        {
          onProgress: (progress) => store.setState({ progress }),
          onDone: (study) => {
            end = null;
            store.setState({ progress: null });
            page.actions.setStudy({ ...study, text });
          },
          onFailed: (reasons) => {
            end = null;
            store.setState({ progress: null, reasons });
          },
        },
      );
    },
    cancel: () => stop(),
  };
}
