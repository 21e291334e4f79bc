/**
 * Meets the bridge in a plain browser: file pickers where the browser has them, else a file input and downloads; recent
 * doors and recovery copies in the browser's database. There is no menu and no way to be opened from outside.
 */
import type {
  Bridge,
  FileToken,
  FoundSnapshot,
  OpenedDoor,
  Platform,
  RecentDoor,
  SavedDoor,
} from "../../electron/bridge.ts";
import { LivingDocuments } from "./living.ts";
import {
  DOOR_TYPE,
  download,
  exportPicker,
  type PickerWindow,
  pickDoor,
  pickPlace,
  readHandle,
  writeHandle,
} from "./pickers.ts";
import { createMemoryVault, createVault, type Vault } from "./vault.ts";

/** A file of this browser; without a handle its text is kept instead. */
interface KnownFile {
  readonly token: FileToken;
  readonly name: string;
  readonly handle: FileSystemFileHandle | null;
  readonly text: string;
  /** Milliseconds since 1970-01-01 UTC. */
  readonly usedAt: number;
}

/** The door that readings belong to: its file, or where none can be reached, its name. */
interface TrialPlace {
  readonly name: string;
  readonly handle: FileSystemFileHandle | null;
  /** A door never saved is another than a file of that name. */
  readonly saved: boolean;
}

interface KeptTrial extends TrialPlace {
  readonly key: string;
  readonly text: string;
}

const MOST_RECENT = 12;
const DOOR_ENDING = ".door.json";

export type BrowserWindow = Window & PickerWindow;

export function createBrowserBridge(window: BrowserWindow, vault: Vault = vaultOf(window)): Bridge {
  const known = new Map<FileToken, KnownFile>();
  const living = new LivingDocuments(window.navigator.locks);
  let unsaved = false;
  window.addEventListener("beforeunload", (event) => {
    if (unsaved) event.preventDefault();
  });

  const remember = async (
    name: string,
    handle: FileSystemFileHandle | null,
    text: string,
    token = newToken(),
  ): Promise<FileToken> => {
    const file: KnownFile = { token, name, handle, text: handle === null ? text : "", usedAt: Date.now() };
    known.set(token, file);
    // Where the browser keeps no database, a door opens and saves all the same.
    await keepRecent(vault, file).catch(() => {});
    return token;
  };

  const saveAs = async (suggestedName: string, text: string): Promise<SavedDoor | null> => {
    const name = doorName(suggestedName);
    const place = await pickPlace(window, name, DOOR_TYPE);
    if (place === null) return null;
    if (place === undefined) {
      download(window, name, text, "application/json");
      return { token: await remember(name, null, text), name };
    }
    await writeHandle(place, text);
    return { token: await remember(place.name, place, text), name: place.name };
  };

  const save = async (token: FileToken | null, name: string, text: string): Promise<SavedDoor | null> => {
    const file = token === null ? undefined : await fileOf(token);
    if (file === undefined) return saveAs(name, text);
    if (file.handle === null) download(window, file.name, text, "application/json");
    else await writeHandle(file.handle, text);
    return { token: await remember(file.name, file.handle, text, file.token), name: file.name };
  };

  const fileOf = async (token: FileToken): Promise<KnownFile | undefined> =>
    known.get(token) ?? (await vault.get<KnownFile>("recent", token));

  const placeOf = async (token: FileToken | null, name: string): Promise<TrialPlace> => {
    const file = token === null ? undefined : await fileOf(token);
    return { name: file?.name ?? name, handle: file?.handle ?? null, saved: token !== null };
  };

  const openRecent = async (token: FileToken): Promise<OpenedDoor> => {
    const file = await fileOf(token);
    if (file === undefined) throw new Error("This door is not in the list any more.");
    if (file.handle === null) return { token, name: file.name, text: file.text };
    try {
      const { name, text } = await readHandle(file.handle);
      await remember(name, file.handle, text, token);
      return { token, name, text };
    } catch (error) {
      if (error instanceof DOMException) {
        await vault.remove("recent", token);
        throw new Error(`${file.name} is not there any more.`);
      }
      throw error;
    }
  };

  return {
    platform: { kind: "browser", system: systemOf(window.navigator.userAgent) },
    async openDoor() {
      const picked = await pickDoor(window);
      if (picked === null) return null;
      const { name, handle, text } = picked;
      return { token: await remember(name, handle, text), name, text };
    },
    saveDoor: save,
    saveDoorAs: saveAs,
    async saveBytes(suggestedName, bytes, type) {
      const place = await pickPlace(window, suggestedName, exportPicker(type));
      if (place === null) return null;
      if (place === undefined) download(window, suggestedName, bytes, type);
      else await writeHandle(place, bytes);
      return place?.name ?? suggestedName;
    },
    async recentDoors() {
      const kept = await vault.all<KnownFile>("recent").catch(() => []);
      const files = [...kept].sort((a, b) => b.usedAt - a.usedAt);
      return files.map(({ token, name, handle }): RecentDoor => {
        return { token, name, folder: handle === null ? "copy kept by this browser" : "" };
      });
    },
    openRecent,
    onOpenFile: () => () => {},
    onMenuCommand: () => () => {},
    setMenuState: () => {},
    setUnsaved: (flag) => {
      unsaved = flag;
    },
    onSaveBeforeClosing: () => () => {},
    async writeSnapshot(snapshot) {
      living.claim(snapshot.document);
      await vault.put("snapshots", snapshot.document, { ...snapshot, savedAt: Date.now() });
    },
    async readSnapshots() {
      const found = await vault.all<FoundSnapshot>("snapshots");
      const open = await living.elsewhere();
      return found.filter(({ document }) => !open.has(document)).sort((a, b) => b.savedAt - a.savedAt);
    },
    async clearSnapshot(document) {
      await vault.remove("snapshots", document);
    },
    async readTrial(token, name) {
      return (await findTrial(vault, await placeOf(token, name)))?.text ?? null;
    },
    async keepTrial(token, name, text) {
      const place = await placeOf(token, name);
      const key = (await findTrial(vault, place))?.key ?? newToken();
      if (text === null) await vault.remove("trials", key);
      else await vault.put("trials", key, { ...place, key, text } satisfies KeptTrial);
    },
  };
}

function vaultOf(window: Window): Vault {
  return "indexedDB" in window ? createVault(window.indexedDB) : createMemoryVault();
}

function newToken(): FileToken {
  return crypto.randomUUID() as string as FileToken;
}

/** Puts a file on the list and takes the longest unused off it. */
async function keepRecent(vault: Vault, file: KnownFile): Promise<void> {
  const others = await vault.all<KnownFile>("recent");
  await vault.put("recent", file.token, file);
  const twins = await sameFiles(others, file);
  const rest = others.filter((f) => f.token !== file.token && !twins.includes(f));
  const old = rest.sort((a, b) => b.usedAt - a.usedAt).slice(MOST_RECENT - 1);
  for (const { token } of [...twins, ...old]) await vault.remove("recent", token);
}

async function findTrial(vault: Vault, place: TrialPlace): Promise<KeptTrial | undefined> {
  for (const kept of await vault.all<KeptTrial>("trials")) {
    if (kept.name === place.name && kept.saved === place.saved && (await sameHandle(kept, place)))
      return kept;
  }
  return undefined;
}

interface Held {
  readonly handle: FileSystemFileHandle | null;
}

async function sameHandle(a: Held, b: Held): Promise<boolean> {
  return a.handle !== null && b.handle !== null ? a.handle.isSameEntry(b.handle) : a.handle === b.handle;
}

/** Entries that stand for the same file under another token. */
async function sameFiles(files: readonly KnownFile[], file: KnownFile): Promise<KnownFile[]> {
  const twins: KnownFile[] = [];
  for (const other of files) {
    if (other.token === file.token || other.name !== file.name) continue;
    if (await sameHandle(file, other)) twins.push(other);
  }
  return twins;
}

function doorName(suggested: string): string {
  return suggested.toLowerCase().endsWith(DOOR_ENDING) ? suggested : suggested + DOOR_ENDING;
}

function systemOf(userAgent: string): Platform["system"] {
  if (/Mac|iPhone|iPad/.test(userAgent)) return "mac";
  if (/Windows/.test(userAgent)) return "windows";
  return /Linux|Android|X11/.test(userAgent) ? "linux" : "other";
}
