/**
 * The way to the computation. At most one question is under way; a newer one waits in its place and pushes out an older
 * that waits, so that typing never queues work. Answers come back in order and are never older than one shown before.
 */
import type { ComputeAnswer, ComputeRequest } from "../worker/messages.ts";

export type Question = Omit<ComputeRequest, "id" | "kind">;

export type Answer = ComputeAnswer & { readonly question: Question };

export interface Engine {
  /** Asks for a view; the last question asked is always answered. */
  ask(question: Question): void;
  onAnswer(listener: (answer: Answer) => void): () => void;
}

/** The part of a Worker that is needed here. */
export interface Port {
  postMessage(request: ComputeRequest): void;
  onmessage: ((event: { data: ComputeAnswer }) => void) | null;
  onerror: ((event: { message: string }) => void) | null;
}

/** @param start makes the worker; called again after a worker died */
export function createEngine(start: () => Port): Engine {
  const listeners = new Set<(answer: Answer) => void>();
  let port: Port | null = null;
  let underWay: { id: number; question: Question } | null = null;
  let waiting: Question | null = null;
  let count = 0;

  const send = (question: Question): void => {
    port ??= open();
    underWay = { id: ++count, question };
    port.postMessage({ id: count, kind: "compute", ...question });
  };
  const settle = (answer: ComputeAnswer): void => {
    if (underWay === null || answer.id !== underWay.id) return;
    const { question } = underWay;
    underWay = null;
    const next = waiting;
    waiting = null;
    if (next !== null) send(next);
    for (const listener of listeners) listener({ ...answer, question });
  };
  const open = (): Port => {
    const made = start();
    made.onmessage = ({ data }) => settle(data);
    made.onerror = ({ message }) => {
      port = null;
      if (underWay !== null) settle({ id: underWay.id, kind: "failed", message });
    };
    return made;
  };

  return {
    ask(question) {
      if (underWay === null) send(question);
      else waiting = question;
    },
    onAnswer(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
