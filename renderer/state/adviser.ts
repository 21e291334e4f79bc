/**
 * Works out the ways out of the findings, beside the view and after it: dozens of doors are tried for one answer, so it has
 * a thread of its own, waits until the person pauses, and is cut short by the next change.
 */
import type { AdviceAnswer, AdviceRequest } from "../worker/messages.ts";
import { isOlder, type Page, type PageState, textOf } from "./page-store.ts";

/** The part of a Worker that is needed here. */
export interface AdvicePort {
  postMessage(request: AdviceRequest): void;
  terminate(): void;
  onmessage: ((event: { data: AdviceAnswer }) => void) | null;
}

/** How long nothing may change before the work begins, ms. */
const PAUSE = 300;

/** Keeps `advice` of the page's state up with its view. Returns what ends it. */
export function adviseOn({ store, actions }: Page, start: () => AdvicePort, pause = PAUSE): () => void {
  let port: AdvicePort | null = null;
  let busy = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let count = 0;

  const stop = (): void => {
    clearTimeout(timer);
    if (!busy) return;
    port?.terminate();
    port = null;
    busy = false;
  };
  const ask = (): void => {
    const state = store.getState();
    const { units } = state;
    const text = textOf(state);
    port ??= start();
    const id = ++count;
    port.onmessage = ({ data }) => {
      if (data.id !== id) return;
      busy = false;
      if (data.kind === "advice") actions.setAdvice({ text, units, findings: data.findings });
    };
    busy = true;
    port.postMessage({ id, kind: "advise", text, units });
  };
  const follow = (state: PageState, before: PageState): void => {
    if (state.view === before.view && state.units === before.units && state.document === before.document)
      return;
    if (state.document?.file === before.document?.file && state.view?.text === before.view?.text) return;
    stop();
    if (needsAdvice(state)) timer = setTimeout(ask, pause);
  };
  const unsubscribe = store.subscribe(follow);
  return () => {
    stop();
    port?.terminate();
    unsubscribe();
  };
}

/** The view is of the text at hand and something in it is not good. */
function needsAdvice(state: PageState): boolean {
  const { view } = state;
  return view !== null && !isOlder(state) && view.findings.some(({ status }) => status !== "ok");
}
