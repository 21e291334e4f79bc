/** The page's one map: what is drawn, as far as it is computed. Another map, a change of the door or Cancel ends it. */
import { createStore, type StoreApi } from "zustand/vanilla";
import { type DoorFile, editDoorFile, fileEntry } from "../../core/door/file.ts";
import type { MapRequest, MapSubject, MapValue } from "../../core/study/map.ts";
import type { MapAnswer, MapOrder } from "../worker/map-messages.ts";
import { type Page, textOf } from "./page-store.ts";

/** The part of a Worker that is needed here. */
export interface MapPort {
  postMessage(order: MapOrder): void;
  terminate(): void;
  onmessage: ((event: { data: MapAnswer }) => void) | null;
  onerror: ((event: { message: string }) => void) | null;
}

export interface DrawnMap {
  /** The door file it is of. */
  readonly file: DoorFile;
  readonly request: MapRequest;
  readonly subject: MapSubject;
  /** Row by row, x fastest; undefined where it is still to come. */
  readonly values: readonly (MapValue | null | undefined)[];
}

export interface MapState {
  readonly running: boolean;
  readonly map: DrawnMap | null;
  readonly reasons: readonly string[];
}

export interface Maps {
  readonly store: StoreApi<MapState>;
  draw(order: MapWish): void;
  cancel(): void;
}

/** What is to be drawn of the door at hand. */
export type MapWish = Omit<MapOrder, "text" | "units" | "share"> & {
  /** Whether a point takes long enough for several threads. */
  readonly heavy: boolean;
};

/** Whether a map of one file is one of the other: they differ in nothing but what the map runs over. */
export function isMapOf({ file, request }: DrawnMap, other: DoorFile): boolean {
  const keys = request.y === null ? [request.x.key] : [request.x.key, request.y.key];
  const moved = keys.reduce((f, key) => editDoorFile(f, key, fileEntry(other, key)), file);
  return JSON.stringify(moved.root) === JSON.stringify(other.root);
}

const CHANGED = "The door was changed, so the map was stopped.";

/** `threads`: for maps whose points take long. */
export function createMaps(page: Page, start: () => MapPort, threads = 1): Maps {
  const store = createStore<MapState>(() => ({ running: false, map: null, reasons: [] }));
  let ports: MapPort[] = [];
  let drawnFor: DoorFile | null = null;

  const end = (reasons: readonly string[] = []): void => {
    for (const port of ports) {
      port.onmessage = null;
      port.onerror = null;
      port.terminate();
    }
    ports = [];
    store.setState({ running: false, reasons });
  };
  const done = (port: MapPort): void => {
    port.terminate();
    ports = ports.filter((other) => other !== port);
    if (ports.length === 0) end();
  };
  const hear = (port: MapPort, file: DoorFile, answer: MapAnswer): void => {
    const { map } = store.getState();
    if (answer.kind === "begun") {
      // Each thread says so, the first one is believed.
      if (map !== null) return;
      const { request, subject } = answer;
      const size = request.x.count * (request.y?.count ?? 1);
      store.setState({ map: { file, request, subject, values: new Array(size).fill(undefined) } });
    } else if (answer.kind === "points" && map !== null) {
      const values = [...map.values];
      for (const [place, value] of answer.points) values[place] = value;
      store.setState({ map: { ...map, values } });
    } else if (answer.kind === "refused") end(answer.reasons);
    else if (answer.kind === "done") done(port);
  };
  page.store.subscribe(({ document }) => {
    const { running, map } = store.getState();
    if (!running || document?.file === drawnFor) return;
    const same = document !== null && map !== null && isMapOf(map, document.file);
    if (!same) end([CHANGED]);
  });

  return {
    store,
    draw({ heavy, ...wish }) {
      end();
      const { document, units } = page.store.getState();
      if (document === null) return;
      const { file } = document;
      drawnFor = file;
      const text = textOf(page.store.getState());
      store.setState({ running: true, map: null });
      ports = Array.from({ length: heavy ? Math.max(1, threads) : 1 }, start);
      const of = ports.length;
      for (const [first, port] of [...ports].entries()) {
        port.onmessage = ({ data }) => hear(port, file, data);
        port.onerror = ({ message }) => end([message]);
        port.postMessage({ ...wish, text, units, share: { first, of } });
      }
    },
    cancel: () => end(),
  };
}
