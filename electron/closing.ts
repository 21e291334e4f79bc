/** Asks before unsaved work is closed. */
import { app, type BrowserWindow, dialog } from "electron";
import { type Answer, createClosing } from "./closing-rules.ts";
import { tell } from "./ipc.ts";

export interface CloseQuestion {
  readonly watch: (window: BrowserWindow) => void;
  readonly setUnsaved: (unsaved: boolean) => void;
  /** The page's answer to being told to save. */
  readonly saved: (worked: boolean) => void;
}

const CHOICES = [
  { label: "Save", answer: "save" },
  { label: "Don’t save", answer: "discard" },
  { label: "Cancel", answer: "stay" },
] as const satisfies readonly { label: string; answer: Answer }[];

/** @param discard forgets the copies of work the person chose to lose */
export function setUpClosing(
  windowOf: () => BrowserWindow | undefined,
  discard: () => Promise<void>,
): CloseQuestion {
  const closing = createClosing();
  let quitting = false;
  app.on("before-quit", () => {
    quitting = true;
  });

  const close = (): void => {
    windowOf()?.destroy();
    if (quitting) app.quit();
  };

  const ask = async (window: BrowserWindow): Promise<void> => {
    const step = closing.answered(await question(window));
    if (step === "save") return tell(window, { kind: "save-before-closing" });
    if (step === "wait") {
      quitting = false;
      return;
    }
    await discard();
    close();
  };

  return {
    setUnsaved: closing.setUnsaved,
    saved: (worked) => {
      if (closing.saved(worked)) close();
      else quitting = false;
    },
    watch: (window) => {
      window.on("close", (event) => {
        const step = closing.wanted();
        if (step === "close") return;
        event.preventDefault();
        if (step === "ask") void ask(window);
      });
      // A page that is gone cannot save: nothing to wait for.
      window.webContents.on("render-process-gone", () => closing.setUnsaved(false));
    },
  };
}

async function question(window: BrowserWindow): Promise<Answer> {
  const { response } = await dialog.showMessageBox(window, {
    type: "question",
    message: "Save the changes to this door?",
    detail: "Without saving, what was changed since the last save is lost.",
    buttons: CHOICES.map(({ label }) => label),
    defaultId: 0,
    cancelId: 2,
    noLink: true,
  });
  return CHOICES[response]?.answer ?? "stay";
}
