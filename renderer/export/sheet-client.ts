/** The page's end of the thread of paper: questions with their answers as promises. */

import type { DocumentName } from "../../core/sheet/paper-set.ts";
import { symbolsFor } from "../../core/sheet/symbols-for.ts";
import type { PageState } from "../state/page-store.ts";
import { textOf } from "../state/page-store.ts";
import type { PaperView, SheetAnswer, SheetOrder, SheetTask, SheetWant } from "../worker/sheet-messages.ts";

/** The part of a Worker that is needed here. */
export interface SheetPort {
  postMessage(order: SheetOrder): void;
  terminate(): void;
  onmessage: ((event: { data: SheetAnswer }) => void) | null;
  onerror: ((event: { message: string }) => void) | null;
}

/** A refusal: sentences for the person. */
export class SheetRefusal extends Error {
  override name = "SheetRefusal";
  readonly reasons: readonly string[];

  constructor(reasons: readonly string[]) {
    super(reasons.join(" "));
    this.reasons = reasons;
  }
}

/** Each rejects with a `SheetRefusal`. */
export interface SheetClient {
  sheets(task: SheetTask): Promise<PaperView>;
  file(task: SheetTask, name: string): Promise<Uint8Array>;
  /** SVG; `outlined`: without any face, for a picture of dots. */
  sheet(task: SheetTask, document: DocumentName, sheet: string, outlined: boolean): Promise<Uint8Array>;
  archive(task: SheetTask, folder: string): Promise<Uint8Array>;
  end(): void;
}

export function startSheetThread(): SheetPort {
  const worker = new Worker(new URL("../worker/sheet-worker.ts", import.meta.url), { type: "module" });
  return worker as unknown as SheetPort;
}

export function createSheetClient(start: () => SheetPort = startSheetThread): SheetClient {
  const waiting = new Map<number, { done: (answer: SheetAnswer) => void; lost: (error: Error) => void }>();
  let port: SheetPort | null = null;
  let last = 0;
  const end = (reason: string): void => {
    port?.terminate();
    port = null;
    for (const { lost } of waiting.values()) lost(new SheetRefusal([reason]));
    waiting.clear();
  };
  const open = (): SheetPort => {
    const opened = start();
    opened.onmessage = ({ data }) => {
      waiting.get(data.id)?.done(data);
      waiting.delete(data.id);
    };
    // The next question starts another thread.
    opened.onerror = ({ message }) => end(message);
    return opened;
  };
  const ask = async (task: SheetTask, want: SheetWant): Promise<SheetAnswer> => {
    port ??= open();
    const id = ++last;
    const asked = new Promise<SheetAnswer>((done, lost) => waiting.set(id, { done, lost }));
    port.postMessage({ id, task, want });
    const answer = await asked;
    if (answer.kind === "refused") throw new SheetRefusal(answer.reasons);
    return answer;
  };
  const bytes = async (task: SheetTask, want: SheetWant): Promise<Uint8Array> => {
    const answer = await ask(task, want);
    if (answer.kind !== "bytes") throw new Error("the thread answered something else");
    return answer.bytes;
  };
  return {
    async sheets(task) {
      const answer = await ask(task, { kind: "sheets" });
      if (answer.kind !== "sheets") throw new Error("the thread answered something else");
      return answer.view;
    },
    file: (task, name) => bytes(task, { kind: "file", name }),
    sheet: (task, document, sheet, outlined) => bytes(task, { kind: "sheet", document, sheet, outlined }),
    archive: (task, folder) => bytes(task, { kind: "archive", folder }),
    end: () => end("The paper was put away."),
  };
}

/** The paper usual where a person's units are, and what they chose instead. */
export interface PaperChoice {
  readonly paper: SheetTask["paper"] | null;
  readonly symbols: SheetTask["symbols"] | null;
}

/** The task of the door at hand. */
export function taskOf(state: PageState, { paper, symbols }: PaperChoice): SheetTask {
  const text = textOf(state);
  const { units, study } = state;
  return {
    text,
    units,
    paper: paper ?? (units === "inch" ? "letter" : "a4"),
    symbols: symbols ?? symbolsFor(units),
    study: study?.text === text ? study : null,
  };
}
