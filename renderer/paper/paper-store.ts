/** What the paper view shows: the sheets of the door at hand, which of them, how large, and what is being written. No React in here. */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { DocumentName } from "../../core/sheet/paper-set.ts";
import { type SheetClient, SheetRefusal, taskOf } from "../export/sheet-client.ts";
import type { Page } from "../state/page-store.ts";
import type { Settings } from "../state/settings.ts";
import type { DocumentView, PaperView, SheetTask, SheetView } from "../worker/sheet-messages.ts";

/** A sheet of a document, by their places. */
export interface Place {
  readonly document: DocumentName;
  readonly sheet: number;
}

/** Times the size on paper, by a screen's own millimetre; or the whole sheet, or its width. */
export type Zoom = number | "whole" | "width";

export interface PaperState {
  /** `null` until the first sheets are laid out. */
  readonly view: PaperView | null;
  /** What the view is of. */
  readonly task: SheetTask | null;
  /** Newer sheets are being laid out. */
  readonly busy: boolean;
  /** Why there is no paper of the door as it is. */
  readonly reasons: readonly string[];
  readonly at: Place;
  readonly zoom: Zoom;
  /** What the printer gets. */
  readonly range: "document" | "all";
  /** What is being written, in words; `null`: nothing. */
  readonly writing: string | null;
  /** The last thing done, for a while. */
  readonly said: string;
  /** Why the last thing could not be done, until another is. */
  readonly trouble: string;
}

export interface PaperStore {
  readonly store: StoreApi<PaperState>;
  /** Follows the door and the settings. Returns what ends it. */
  follow(): () => void;
  show(document: DocumentName): void;
  goTo(sheet: number): void;
  /** Sheets on or back, through all documents. */
  leaf(by: number): void;
  /** To the first or the last sheet of the document. */
  leafTo(end: "first" | "last"): void;
  zoom(to: Zoom): void;
  /** What the printer gets the next time; then the document shown again. */
  range(what: PaperState["range"]): void;
  /** Carries out what writes a file, one at a time; `what` is said while it lasts, and what came of it after. */
  write(what: string, work: (task: SheetTask) => Promise<string | null>): Promise<void>;
}

/** Steps of the zoom by hand. */
export const ZOOM_STEPS = [0.25, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8, 4] as const;

/** Changes of the door that follow each other this fast are laid out once, ms. */
const PAUSE = 200;

/** ms. */
const SAID_FOR = 6000;

export function createPaperStore(page: Page, settings: StoreApi<Settings>, client: SheetClient): PaperStore {
  const store = createStore<PaperState>(() => ({
    view: null,
    task: null,
    busy: true,
    reasons: [],
    at: { document: "build-sheet", sheet: 0 },
    zoom: "whole",
    range: "document",
    writing: null,
    said: "",
    trouble: "",
  }));
  const { getState: get, setState: set } = store;
  let asked = 0;

  const lay = async (): Promise<void> => {
    const mine = ++asked;
    const task = taskOf(page.store.getState(), settings.getState());
    set({ busy: true });
    try {
      const view = await client.sheets(task);
      if (mine === asked) set({ view, task, busy: false, reasons: [], at: placeIn(view, get().at) });
    } catch (error) {
      if (mine === asked) set({ view: null, task: null, busy: false, reasons: reasonsOf(error) });
    }
  };

  return {
    store,
    follow() {
      let timer: ReturnType<typeof setTimeout> | undefined;
      const later = (): void => {
        clearTimeout(timer);
        timer = setTimeout(() => void lay(), PAUSE);
      };
      const ends = [
        page.store.subscribe((now, before) => {
          const same = now.document?.file === before.document?.file && now.study === before.study;
          if (!same || now.units !== before.units) later();
        }),
        settings.subscribe((now, before) => {
          if (now.paper !== before.paper || now.symbols !== before.symbols) later();
        }),
      ];
      void lay();
      return () => {
        asked++;
        clearTimeout(timer);
        for (const end of ends) end();
      };
    },
    show: (document) => set({ at: { document, sheet: 0 } }),
    goTo: (sheet) => set({ at: { ...get().at, sheet } }),
    leaf(by) {
      const { view, at } = get();
      if (view !== null) set({ at: leafed(view, at, by) });
    },
    leafTo(end) {
      const document = documentAt(get());
      const last = (document?.sheets.length ?? 1) - 1;
      set({ at: { ...get().at, sheet: end === "first" ? 0 : Math.max(0, last) } });
    },
    zoom: (zoom) => set({ zoom }),
    range: (range) => set({ range }),
    async write(what, work) {
      const { task, writing } = get();
      if (task === null || writing !== null) return;
      set({ writing: what, said: "", trouble: "" });
      try {
        const name = await work(task);
        set({ writing: null, said: name === null ? "" : `Written to ${name}` });
        setTimeout(() => set({ said: "" }), SAID_FOR);
      } catch (error) {
        set({ writing: null, trouble: `It could not be written: ${reasonsOf(error).join(" ")}` });
      }
    },
  };
}

function reasonsOf(error: unknown): readonly string[] {
  if (error instanceof SheetRefusal) return error.reasons;
  return [error instanceof Error ? error.message : String(error)];
}

export function documentAt({ view, at }: PaperState): DocumentView | null {
  return view?.documents.find(({ name }) => name === at.document) ?? null;
}

export function sheetAt(state: PaperState): SheetView | null {
  return documentAt(state)?.sheets[state.at.sheet] ?? null;
}

/** What the printer gets. */
export function sheetsToPrint(state: PaperState): readonly SheetView[] {
  if (state.range === "document") return documentAt(state)?.sheets ?? [];
  return state.view?.documents.flatMap(({ sheets }) => sheets) ?? [];
}

/** Where one stands once the sheets are others: the same document, as far on as it goes. */
function placeIn({ documents }: PaperView, { document, sheet }: Place): Place {
  const count = documents.find(({ name }) => name === document)?.sheets.length ?? 0;
  return { document, sheet: Math.max(0, Math.min(sheet, count - 1)) };
}

function leafed({ documents }: PaperView, at: Place, by: number): Place {
  const all = documents.flatMap(({ name, sheets }) => sheets.map((_, sheet) => ({ document: name, sheet })));
  const here = all.findIndex(({ document, sheet }) => document === at.document && sheet === at.sheet);
  if (here === -1) return all[0] ?? at;
  return all[Math.max(0, Math.min(all.length - 1, here + by))];
}

/** The next step of the zoom up or down from how large the sheet stands. */
export function zoomFrom(scale: number, direction: 1 | -1): number {
  const steps = direction === 1 ? ZOOM_STEPS : [...ZOOM_STEPS].reverse();
  const next = steps.find((step) => (direction === 1 ? step > scale * 1.01 : step < scale * 0.99));
  return next ?? steps[steps.length - 1];
}

/** CSS pixels of a millimetre: 96 to the inch, by the definition of both. */
export const PX_PER_MM = 96 / 25.4;

/** How large a sheet stands on a desk of a size in px: times its size on paper. */
export function scaleOf(
  zoom: Zoom,
  { widthMm, heightMm }: Pick<SheetView, "widthMm" | "heightMm">,
  desk: { readonly width: number; readonly height: number },
): number {
  if (typeof zoom === "number") return zoom;
  const wide = desk.width / (widthMm * PX_PER_MM);
  const scale = zoom === "width" ? wide : Math.min(wide, desk.height / (heightMm * PX_PER_MM));
  return Math.max(0.05, scale);
}
