/**
 * The messages between page and shell, and the guards at the border. What arrives is `unknown`: a guard lets
 * through exactly the stated fields, of the stated kind and size, or refuses with a reason.
 */
import type {
  ExportType,
  FileToken,
  FoundSnapshot,
  MenuCommand,
  MenuState,
  OpenedDoor,
  RecentDoor,
  RecoverySnapshot,
  SavedDoor,
} from "./bridge.ts";
import { EXPORT_ENDINGS } from "./file-names.ts";

/** One channel each way. */
export const CALL_CHANNEL = "swingstill:call";
export const EVENT_CHANNEL = "swingstill:event";

/** Requests of the page, by name: what goes with them and what comes back; `unknown` where nothing of use does. */
export interface Calls {
  "door.open": { readonly args: Nothing; readonly result: OpenedDoor | null };
  "door.save": { readonly args: SaveDoorArgs; readonly result: SavedDoor | null };
  "door.saveAs": { readonly args: SaveDoorAsArgs; readonly result: SavedDoor | null };
  "bytes.save": { readonly args: SaveBytesArgs; readonly result: string | null };
  "recent.list": { readonly args: Nothing; readonly result: readonly RecentDoor[] };
  "recent.open": { readonly args: { readonly token: FileToken }; readonly result: OpenedDoor };
  "page.ready": { readonly args: Nothing; readonly result: unknown };
  "menu.state": { readonly args: MenuState; readonly result: unknown };
  "close.unsaved": { readonly args: { readonly unsaved: boolean }; readonly result: unknown };
  "close.saved": { readonly args: { readonly saved: boolean }; readonly result: unknown };
  "snapshot.write": { readonly args: RecoverySnapshot; readonly result: unknown };
  "snapshot.read": { readonly args: Nothing; readonly result: readonly FoundSnapshot[] };
  "snapshot.clear": { readonly args: { readonly document: string }; readonly result: unknown };
  "trial.read": { readonly args: TrialReadArgs; readonly result: string | null };
  "trial.keep": { readonly args: TrialKeepArgs; readonly result: unknown };
}

export type Nothing = Readonly<Record<never, never>>;

export interface SaveDoorArgs extends SaveDoorAsArgs {
  readonly token: FileToken | null;
}

export interface SaveDoorAsArgs {
  readonly name: string;
  readonly text: string;
}

export interface SaveBytesArgs {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly type: ExportType;
}

export interface TrialReadArgs {
  readonly token: FileToken | null;
  readonly name: string;
}

export interface TrialKeepArgs extends TrialReadArgs {
  readonly text: string | null;
}

export type CallName = keyof Calls;

/** A request that passed its guard. */
export type Call = { [K in CallName]: { readonly name: K; readonly args: Calls[K]["args"] } }[CallName];

/** How a request ends: errors cross the border as a sentence, never as an object. */
export type Reply<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string };

/** What the shell tells the page. */
export type ShellEvent =
  | { readonly kind: "open-file"; readonly door: OpenedDoor }
  | { readonly kind: "menu"; readonly command: MenuCommand }
  | { readonly kind: "save-before-closing" };

/** A message that does not pass. */
export class Refusal extends Error {
  override name = "Refusal";
}

/** Longest door text taken or given, in UTF-16 units; a door is a few kilobytes. */
export const MAX_TEXT = 4_000_000;
/** Longest record of a bench's readings, in UTF-16 units: a filmed swing's table goes with them. */
export const MAX_TRIAL = 20_000_000;
/** Longest file name taken, in UTF-16 units. */
export const MAX_NAME = 255;
/** Largest export taken, bytes; a minute of replay video is some tens of megabytes. */
export const MAX_BYTES = 512 * 1024 * 1024;
/** Longest name of an undo step shown in the menu. */
const MAX_LABEL = 120;

type Guard<T> = (value: unknown, what: string) => T;

const refuse = (what: string, expected: string): never => {
  throw new Refusal(`${what} must be ${expected}`);
};

const text =
  (most: number): Guard<string> =>
  (value, what) =>
    typeof value === "string" && value.length <= most
      ? value
      : refuse(what, `text of at most ${most} characters`);

const flag: Guard<boolean> = (value, what) =>
  typeof value === "boolean" ? value : refuse(what, "true or false");

const matching =
  <T extends string>(pattern: RegExp, expected: string): Guard<T> =>
  (value, what) =>
    typeof value === "string" && pattern.test(value) ? (value as T) : refuse(what, expected);

const orNull =
  <T>(guard: Guard<T>): Guard<T | null> =>
  (value, what) =>
    value === null ? null : guard(value, what);

const bytes: Guard<Uint8Array> = (value, what) =>
  value instanceof Uint8Array && value.byteLength <= MAX_BYTES
    ? value
    : refuse(what, `bytes, at most ${MAX_BYTES} of them`);

const exportType: Guard<ExportType> = (value, what) =>
  typeof value === "string" && Object.hasOwn(EXPORT_ENDINGS, value)
    ? (value as ExportType)
    : refuse(what, `one of ${Object.keys(EXPORT_ENDINGS).join(", ")}`);

const token = matching<FileToken>(/^[0-9a-f]{32}$/, "a token given out before");
const documentName = matching<string>(/^[a-z0-9-]{1,64}$/, "1 to 64 lower-case letters, digits or hyphens");
const fileName = text(MAX_NAME);
const doorText = text(MAX_TEXT);

/** An object with these fields and no others. */
const fields =
  <T>(guards: { readonly [K in keyof T]: Guard<T[K]> }): Guard<T> =>
  (value, what) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return refuse(what, "an object");
    const stranger = Object.keys(value).find((key) => !Object.hasOwn(guards, key));
    if (stranger !== undefined)
      throw new Refusal(`${what} has the unknown field ${JSON.stringify(stranger)}`);
    const checked = Object.entries<Guard<unknown>>(guards).map(([key, guard]) => {
      const own = Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined;
      return [key, guard(own, `${what}.${key}`)];
    });
    return Object.fromEntries(checked) as T;
  };

const GUARDS: { readonly [K in CallName]: Guard<Calls[K]["args"]> } = {
  "door.open": fields<Nothing>({}),
  "door.save": fields<SaveDoorArgs>({ token: orNull(token), name: fileName, text: doorText }),
  "door.saveAs": fields<SaveDoorAsArgs>({ name: fileName, text: doorText }),
  "bytes.save": fields<SaveBytesArgs>({ name: fileName, bytes, type: exportType }),
  "recent.list": fields<Nothing>({}),
  "recent.open": fields({ token }),
  "page.ready": fields<Nothing>({}),
  "menu.state": fields<MenuState>({ undo: orNull(text(MAX_LABEL)), redo: orNull(text(MAX_LABEL)) }),
  "close.unsaved": fields({ unsaved: flag }),
  "close.saved": fields({ saved: flag }),
  "snapshot.write": fields<RecoverySnapshot>({
    document: documentName,
    name: fileName,
    token: orNull(token),
    text: doorText,
  }),
  "snapshot.read": fields<Nothing>({}),
  "snapshot.clear": fields({ document: documentName }),
  "trial.read": fields<TrialReadArgs>({ token: orNull(token), name: fileName }),
  "trial.keep": fields<TrialKeepArgs>({
    token: orNull(token),
    name: fileName,
    text: orNull(text(MAX_TRIAL)),
  }),
};

/**
 * Checks a request.
 *
 * @throws Refusal naming the field and what was expected of it
 */
export function checkCall(name: unknown, args: unknown): Call {
  if (typeof name !== "string" || !Object.hasOwn(GUARDS, name)) throw new Refusal("there is no such request");
  const guard: Guard<unknown> = GUARDS[name as CallName];
  return { name, args: guard(args, name) } as Call;
}
