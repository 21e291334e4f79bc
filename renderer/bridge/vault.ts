/** A few named records kept in the browser's database: recent doors with their file handles, recovery copies, readings from the bench. */

export const SHELVES = ["recent", "snapshots", "trials"] as const;
export type Shelf = (typeof SHELVES)[number];

export interface Vault {
  /** Every record of a shelf, in no order. */
  all<T>(shelf: Shelf): Promise<readonly T[]>;
  get<T>(shelf: Shelf, key: string): Promise<T | undefined>;
  put(shelf: Shelf, key: string, value: unknown): Promise<void>;
  remove(shelf: Shelf, key: string): Promise<void>;
}

const NAME = "swingstill";
/** 2: readings from the bench. */
const VERSION = 2;

/** The database, opened when first needed. */
export function createVault(factory: IDBFactory): Vault {
  let opened: Promise<IDBDatabase> | null = null;
  const database = (): Promise<IDBDatabase> => {
    if (opened === null) {
      opened = open(factory);
      // What stood in the way may be gone the next time.
      opened.catch(() => {
        opened = null;
      });
    }
    return opened;
  };
  const on = async <T>(
    shelf: Shelf,
    mode: IDBTransactionMode,
    ask: (store: IDBObjectStore) => IDBRequest<T>,
  ): Promise<T> => {
    const transaction = (await database()).transaction(shelf, mode, { durability: "strict" });
    const request = ask(transaction.objectStore(shelf));
    await finished(transaction);
    return request.result;
  };
  return {
    all: <T>(shelf: Shelf) => on(shelf, "readonly", (store) => store.getAll() as IDBRequest<T[]>),
    get: <T>(shelf: Shelf, key: string) =>
      on(shelf, "readonly", (store) => store.get(key) as IDBRequest<T | undefined>),
    put: async (shelf, key, value) => void (await on(shelf, "readwrite", (store) => store.put(value, key))),
    remove: async (shelf, key) => void (await on(shelf, "readwrite", (store) => store.delete(key))),
  };
}

function open(factory: IDBFactory): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = factory.open(NAME, VERSION);
    request.onupgradeneeded = () => {
      const { objectStoreNames } = request.result;
      for (const shelf of SHELVES) {
        if (!objectStoreNames.contains(shelf)) request.result.createObjectStore(shelf);
      }
    };
    request.onsuccess = () => {
      // A later version of the program must not wait for this page.
      request.result.onversionchange = () => request.result.close();
      resolve(request.result);
    };
    request.onblocked = () =>
      reject(new Error("an older version of this page is still open: close it, then load this one anew"));
    request.onerror = () => reject(request.error ?? new Error("the browser keeps no database"));
  });
}

function finished(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("the browser's database refused"));
  });
}

/** A vault that lasts as long as the page: where the browser forbids its database, and for tests. */
export function createMemoryVault(): Vault {
  const shelves: Record<Shelf, Map<string, unknown>> = {
    recent: new Map(),
    snapshots: new Map(),
    trials: new Map(),
  };
  return {
    all: async <T>(shelf: Shelf) => [...shelves[shelf].values()] as T[],
    get: async <T>(shelf: Shelf, key: string) => shelves[shelf].get(key) as T | undefined,
    put: async (shelf, key, value) => void shelves[shelf].set(key, structuredClone(value)),
    remove: async (shelf, key) => void shelves[shelf].delete(key),
  };
}
