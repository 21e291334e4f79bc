/**
 * Doors as files: new, open, save, recovery. Decides what is asked of the person and when; how files are reached is the
 * bridge's business, how questions look the page's.
 */
import type { Bridge, FileToken, FoundSnapshot, OpenedDoor, RecentDoor } from "../../electron/bridge.ts";
import { openText } from "./open-text.ts";
import { isUnsaved, type OpenDocument, type Page, textOf } from "./page-store.ts";

export type UnsavedAnswer = "save" | "discard" | "stay";

/** What the page asks or tells. */
export interface Asker {
  /** The door at hand has unsaved changes and is about to be replaced. */
  unsaved(name: string): Promise<UnsavedAnswer>;
  /** Something went wrong, in sentences. */
  tell(title: string, reasons: readonly string[]): void;
}

export interface Documents {
  /** A door to start from: saved under a name of its own, nothing lost where it is left unchanged. */
  startFrom(name: string, text: string): Promise<boolean>;
  open(): Promise<void>;
  openRecent(recent: RecentDoor): Promise<void>;
  /** A file from outside: dropped on the window or opened by the system. */
  openFile(door: Omit<OpenedDoor, "token"> & { readonly token: FileToken | null }): Promise<void>;
  save(): Promise<boolean>;
  saveAs(): Promise<boolean>;
  /** Copies of unsaved work that a crash left, newest first. */
  leftovers(): Promise<readonly FoundSnapshot[]>;
  recover(snapshot: FoundSnapshot): Promise<void>;
  discard(snapshot: FoundSnapshot): Promise<void>;
  /** Keeps a recovery copy of unsaved work from now on. Returns what ends it. */
  keepCopies(delay?: number): () => void;
}

const ENDING = ".door.json";

export function createDocuments(page: Page, bridge: Bridge, asker: Asker): Documents {
  const { store, actions } = page;

  const attempt = async (title: string, action: () => Promise<boolean>): Promise<boolean> => {
    try {
      return await action();
    } catch (error) {
      asker.tell(title, [error instanceof Error ? error.message : String(error)]);
      return false;
    }
  };

  const save = (always: boolean): Promise<boolean> =>
    attempt("The door could not be saved", async () => {
      const { document } = store.getState();
      if (document === null) return false;
      const text = textOf(store.getState());
      const saved = always
        ? await bridge.saveDoorAs(document.name, text)
        : await bridge.saveDoor(document.token, document.name, text);
      if (saved === null) return false;
      actions.saved(saved.name, saved.token, text);
      return true;
    });

  /** True where the door at hand may be replaced. */
  const letGo = async (): Promise<boolean> => {
    const state = store.getState();
    if (state.document === null || !isUnsaved(state)) return true;
    const answer = await asker.unsaved(state.document.name);
    if (answer === "save") return save(false);
    return answer === "discard";
  };

  const show = async (document: Omit<OpenDocument, "file">, text: string): Promise<boolean> => {
    const opened = openText(text);
    if (!opened.ok) {
      asker.tell(`${document.name} could not be opened`, opened.reasons);
      return false;
    }
    const last = store.getState().document;
    actions.show({ ...document, file: opened.file });
    if (last !== null) await bridge.clearSnapshot(last.id).catch(() => {});
    return true;
  };

  const openDoor = async (door: { name: string; text: string; token: FileToken | null }): Promise<boolean> =>
    (await letGo()) && show({ id: newId(), name: door.name, token: door.token, saved: door.text }, door.text);

  return {
    startFrom: async (name, text) =>
      (await letGo()) && show({ id: newId(), name: name + ENDING, token: null, saved: text }, text),
    open: async () => {
      await attempt("The door could not be opened", async () => {
        const door = await bridge.openDoor();
        return door !== null && openDoor(door);
      });
    },
    openRecent: async ({ token }) => {
      await attempt("The door could not be opened", async () => openDoor(await bridge.openRecent(token)));
    },
    openFile: async (door) => {
      await openDoor(door);
    },
    save: () => save(false),
    saveAs: () => save(true),
    leftovers: () => bridge.readSnapshots().catch(() => []),
    async recover({ document, name, token, text }) {
      if (!(await letGo())) return;
      const opened = openText(text);
      if (!opened.ok) return asker.tell(`${name} could not be recovered`, opened.reasons);
      actions.show({ id: document, file: opened.file, name, token, saved: null });
    },
    discard: ({ document }) => bridge.clearSnapshot(document).catch(() => {}),
    keepCopies: (delay = 400) => keepCopies(page, bridge, delay),
  };
}

function keepCopies({ store }: Page, bridge: Bridge, delay: number): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let kept: string | null = null;
  const keep = (): void => {
    const state = store.getState();
    const { document } = state;
    if (document === null) return;
    const text = isUnsaved(state) ? textOf(state) : null;
    if (text === kept) return;
    kept = text;
    const { id, name, token } = document;
    const done =
      text === null ? bridge.clearSnapshot(id) : bridge.writeSnapshot({ document: id, name, token, text });
    // A copy that could not be kept is tried again with the next change.
    done.catch(() => {
      kept = null;
    });
  };
  const unsubscribe = store.subscribe((state, before) => {
    if (state.document === before.document) return;
    if (state.document?.id !== before.document?.id) kept = null;
    clearTimeout(timer);
    timer = setTimeout(keep, delay);
  });
  return () => {
    clearTimeout(timer);
    unsubscribe();
  };
}

function newId(): string {
  return crypto.randomUUID();
}
