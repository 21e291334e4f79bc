/** The page's one map: what is drawn, as far as it is computed. Another map, a change of the door or Cancel ends it. */
import { createStore, type StoreApi } from "zustand/vanilla";
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
  /** The door file's text it is of. */
  readonly text: string;
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
  draw(order: Omit<MapOrder, "text" | "units">): void;
  cancel(): void;
}

export function createMaps(page: Page, start: () => MapPort): Maps {
  const store = createStore<MapState>(() => ({ running: false, map: null, reasons: [] }));
  let port: MapPort | null = null;

  const end = (reasons: readonly string[] = []): void => {
    if (port !== null) {
      port.onmessage = null;
      port.terminate();
    }
    port = null;
    store.setState({ running: false, reasons });
  };
  const hear = (text: string, answer: MapAnswer): void => {
    const { map } = store.getState();
    if (answer.kind === "begun") {
      const { request, subject } = answer;
      const size = request.x.count * (request.y?.count ?? 1);
      store.setState({ map: { text, request, subject, values: new Array(size).fill(undefined) } });
    } else if (answer.kind === "points" && map !== null) {
      const values = [...map.values];
      for (const [place, value] of answer.points) values[place] = value;
      store.setState({ map: { ...map, values } });
    } else if (answer.kind === "refused") end(answer.reasons);
    else if (answer.kind === "done") end();
  };
  page.store.subscribe((state) => {
    const { running, map } = store.getState();
    if (running && map !== null && map.text !== textOf(state))
      end(["The door was changed, so the map was stopped."]);
  });

  return {
    store,
    draw(order) {
      end();
      const text = textOf(page.store.getState());
      const { units } = page.store.getState();
      port = start();
      port.onmessage = ({ data }) => hear(text, data);
      port.onerror = ({ message }) => end([message]);
      store.setState({ running: true, map: null });
      port.postMessage({ ...order, text, units });
    },
    cancel: () => end(),
  };
}
