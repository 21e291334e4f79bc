/**
 * Keeps what was measured for the door it was measured on: brought back when that door is opened again, written soon after every
 * change. A door that was never saved goes by the name it would be saved under; saved, its readings go with it.
 */
import type { FileToken } from "../../electron/bridge.ts";
import type { OpenDocument, Page } from "./page-store.ts";
import { isNothing, type Measurements, readRecord, writeRecord } from "./trial-record.ts";

/** The part of the bridge that is needed here. */
export interface TrialShelf {
  readTrial(token: FileToken | null, name: string): Promise<string | null>;
  keepTrial(token: FileToken | null, name: string, text: string | null): Promise<void>;
}

export interface TrialKeeper {
  /** What was measured changed: it is kept soon. */
  changed(): void;
}

/** What the keeper is told and asks. */
export interface Keeping {
  readonly now: () => Measurements;
  /** Another door is at hand, of which nothing is known yet. */
  readonly anew: () => void;
  /** What was kept for the door at hand. */
  readonly found: (measured: Measurements) => void;
  /** Why something cannot be kept or brought back, a sentence; "" once it can. */
  readonly trouble: (sentence: string) => void;
}

/** ms; as for the recovery copies. */
const SOON = 400;

const NEWER =
  "The readings kept for this door are of a newer program: they are left as they are, and new ones are not kept.";

type Place = Pick<OpenDocument, "id" | "token" | "name">;

export function createTrialKeeper({ store }: Page, shelf: TrialShelf, keeping: Keeping): TrialKeeper {
  let place: Place | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Kept readings were looked for: until then nothing may be written over them. */
  let settled = false;
  let locked = false;
  /** One after the other: the newest is the last written. */
  let writing: Promise<void> = Promise.resolve();

  const put = (at: Place, text: string | null): void => {
    writing = writing
      .then(() => shelf.keepTrial(at.token, at.name, text))
      .then(
        () => keeping.trouble(""),
        (error: unknown) => keeping.trouble(`The readings could not be kept: ${reasonOf(error)}`),
      );
  };
  const keep = (): void => {
    clearTimeout(timer);
    timer = undefined;
    if (place === null || locked) return;
    const measured = keeping.now();
    put(place, isNothing(measured) ? null : writeRecord(measured));
  };
  const flush = (): void => {
    if (timer !== undefined) keep();
  };
  const bringBack = async (at: Place): Promise<void> => {
    const text = await shelf.readTrial(at.token, at.name);
    if (place?.id !== at.id) return;
    const read = text === null ? null : readRecord(text);
    locked = read?.kind === "newer";
    if (locked) keeping.trouble(NEWER);
    // What was written in the meantime is the person's newest word.
    if (read?.kind === "measured" && isNothing(keeping.now())) keeping.found(read.measured);
  };
  const open = (at: Place): void => {
    flush();
    place = at;
    settled = false;
    locked = false;
    keeping.anew();
    bringBack(at)
      .catch((error: unknown) => keeping.trouble(`The readings kept could not be read: ${reasonOf(error)}`))
      .finally(() => {
        if (place?.id !== at.id) return;
        settled = true;
        if (!isNothing(keeping.now())) later();
      });
  };
  const later = (): void => {
    clearTimeout(timer);
    if (settled) timer = setTimeout(keep, SOON);
  };
  /** Saved under another name or for the first time. */
  const moved = (from: Place, to: Place): void => {
    flush();
    place = to;
    if (locked || isNothing(keeping.now())) return;
    keep();
    // The name alone is free for another door that is started from it.
    if (from.token === null) put(from, null);
  };

  store.subscribe(({ document }) => {
    if (document === null) return;
    const { id, token, name } = document;
    if (place?.id !== id) open({ id, token, name });
    else if (place.token !== token || place.name !== name) moved(place, { id, token, name });
  });
  return { changed: later };
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
