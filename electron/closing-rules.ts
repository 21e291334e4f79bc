/** When a window may close. */

/** What a person answers to "save first?". */
export type Answer = "save" | "discard" | "stay";

export type Step =
  /** Nothing unsaved, or all settled. */
  | "close"
  /** Put the question. */
  | "ask"
  /** Have the page save, then close if it worked. */
  | "save"
  /** Stay open: the question is still open, or was answered so. */
  | "wait";

export interface Closing {
  readonly setUnsaved: (unsaved: boolean) => void;
  /** The person wants to close. */
  readonly wanted: () => Step;
  readonly answered: (answer: Answer) => Step;
  /** The page saved, or could not or was told not to. Whether the window closes now. */
  readonly saved: (worked: boolean) => boolean;
}

export function createClosing(): Closing {
  let unsaved = false;
  let state: "idle" | "asking" | "saving" = "idle";
  return {
    setUnsaved: (flag) => {
      unsaved = flag;
    },
    wanted: () => {
      if (state === "asking") return "wait";
      // Asked again while the page saves: it may have got stuck, and the person must be able to leave.
      if (!unsaved && state === "idle") return "close";
      state = "asking";
      return "ask";
    },
    answered: (answer) => {
      state = answer === "save" ? "saving" : "idle";
      if (answer === "save") return "save";
      if (answer === "stay") return "wait";
      unsaved = false;
      return "close";
    },
    saved: (worked) => {
      if (state !== "saving") return false;
      state = "idle";
      if (worked) unsaved = false;
      return worked;
    },
  };
}
