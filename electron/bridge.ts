/**
 * What the page asks of its surroundings. On the desktop the preload script meets it; in a plain browser file
 * pickers and downloads do. Types only: the page must not load any of the shell.
 *
 * A request that fails rejects with an Error whose message is meant for the person. A dialog the person
 * cancels is no failure: the answer is null.
 */

/** Stands for a file the person chose. The page never learns a path and never names one. */
export type FileToken = string & { readonly __token: "file" };

export interface OpenedDoor {
  readonly token: FileToken;
  /** File name without its folder. */
  readonly name: string;
  /** Exactly as it stands in the file. */
  readonly text: string;
}

export interface SavedDoor {
  readonly token: FileToken;
  readonly name: string;
}

export interface RecentDoor {
  readonly token: FileToken;
  readonly name: string;
  /** Name of the folder it lies in, to tell two of one name apart. */
  readonly folder: string;
}

/** A copy of unsaved work, kept so that a crash loses nothing. */
export interface RecoverySnapshot {
  /** Chosen by the page, one per open door: lower-case letters, digits and hyphens, 1 to 64 of them. */
  readonly document: string;
  /** File name, or the name the door would be saved under. */
  readonly name: string;
  /** The file the work belongs to, or null if it never had one. */
  readonly token: FileToken | null;
  readonly text: string;
}

export interface FoundSnapshot extends RecoverySnapshot {
  /** When it was written, milliseconds since 1970-01-01 UTC. */
  readonly savedAt: number;
}

/** The menu's entries that the page carries out; those for text editing are the system's own. */
export type MenuCommand =
  | "new"
  | "open"
  | "save"
  | "save-as"
  | "export-trace"
  | "export-picture"
  | "export-sheet"
  | "paper"
  | "undo"
  | "redo"
  | "play-pause"
  | "units"
  | "theme"
  | "larger-text"
  | "smaller-text"
  | "usual-text"
  | "help";

/** What the menu shows of the page's state. */
export interface MenuState {
  /** What undo would take back, in words; null if nothing. */
  readonly undo: string | null;
  readonly redo: string | null;
}

/** Kinds of file that can be saved; the name's ending follows from it. */
export type ExportType =
  | "text/csv"
  | "text/plain"
  | "text/html"
  | "text/x-c"
  | "text/x-netlist"
  | "image/png"
  | "image/svg+xml"
  | "image/vnd.dxf"
  | "application/pdf"
  | "application/zip"
  | "video/webm";

export interface Platform {
  readonly kind: "desktop" | "browser";
  readonly system: "mac" | "windows" | "linux" | "other";
}

/** Ends a subscription. */
export type Unsubscribe = () => void;

export interface Bridge {
  readonly platform: Platform;

  openDoor(): Promise<OpenedDoor | null>;
  /** Writes to the token's file; asks for a place where the token is null. */
  saveDoor(token: FileToken | null, suggestedName: string, text: string): Promise<SavedDoor | null>;
  /** Always asks for a place. */
  saveDoorAs(suggestedName: string, text: string): Promise<SavedDoor | null>;
  /** Asks for a place and writes the bytes there; answers the file's name. */
  saveBytes(suggestedName: string, bytes: Uint8Array, type: ExportType): Promise<string | null>;

  recentDoors(): Promise<readonly RecentDoor[]>;
  /** Rejects where the file is gone, and forgets it. */
  openRecent(token: FileToken): Promise<OpenedDoor>;
  /** A door opened from outside: double click on a file, a second start with a file, a system's list of recent ones. */
  onOpenFile(listener: (door: OpenedDoor) => void): Unsubscribe;

  onMenuCommand(listener: (command: MenuCommand) => void): Unsubscribe;
  setMenuState(state: MenuState): void;

  /** While set, closing asks first. */
  setUnsaved(unsaved: boolean): void;
  /** The person chose to save before closing: save, and answer whether it worked; false keeps the window open. */
  onSaveBeforeClosing(save: () => Promise<boolean>): Unsubscribe;

  writeSnapshot(snapshot: RecoverySnapshot): Promise<void>;
  readSnapshots(): Promise<readonly FoundSnapshot[]>;
  clearSnapshot(document: string): Promise<void>;

  /** What was measured on a door's bench, as last kept; `null`: nothing. A door never saved goes by the name it would be saved under. */
  readTrial(token: FileToken | null, name: string): Promise<string | null>;
  /** Keeps it for the next time that door is opened; `null` forgets it. */
  keepTrial(token: FileToken | null, name: string, text: string | null): Promise<void>;
}

declare global {
  interface Window {
    /** Set by the desktop shell, absent in a browser. */
    readonly swingstill?: Bridge;
  }
}
