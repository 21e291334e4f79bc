/** The page's keys. On the desktop the menu has most of them too; the page takes them first and the same commands run. */
import { useEffect } from "react";
import type { CommandName } from "./commands.ts";
import { useWorkbench } from "./workbench.ts";

export interface KeyHelp {
  readonly keys: string;
  readonly does: string;
}

/** For the help; the table below is what acts. */
export const KEY_HELP: readonly KeyHelp[] = [
  { keys: "Space", does: "play or pause" },
  { keys: ", .", does: "one frame back, one frame on" },
  { keys: "Arrows on the door", does: "turn the view; + and − come nearer and go away" },
  { keys: "Arrows on the hold", does: "shorten or lengthen it" },
  { keys: "↑ ↓ in an entry", does: "nudge the number; with Shift far, with Alt a little" },
  { keys: "Esc in an entry", does: "give up what was typed" },
  { keys: "F6", does: "go to the next region: parts, door, strip" },
  { keys: "Ctrl Z, Ctrl Y", does: "undo, redo" },
  { keys: "Ctrl O, Ctrl S, Ctrl Shift S", does: "open, save, save as" },
  { keys: "Ctrl P", does: "paper: look, print, save; there Page Up, Page Down leaf, + − 0 zoom" },
  { keys: "Ctrl +, Ctrl −, Ctrl 0", does: "larger, smaller, usual text" },
  { keys: "F1", does: "this help" },
];

const WITH_CONTROL: Readonly<Record<string, CommandName>> = {
  o: "open",
  p: "paper",
  s: "save",
  "shift+s": "save-as",
  z: "undo",
  "shift+z": "redo",
  y: "redo",
  "+": "larger-text",
  "=": "larger-text",
  "shift++": "larger-text",
  "-": "smaller-text",
  "0": "usual-text",
};

/** The command of a key with Ctrl (or Cmd); undefined where there is none. */
export function commandOfKey(key: string, shift: boolean): CommandName | undefined {
  const low = key.toLowerCase();
  return WITH_CONTROL[shift ? `shift+${low}` : low];
}

const TAKES_SPACE =
  "input, textarea, select, button, summary, a, [role=slider], [role=tab], [role=menuitem], [role=radio]";

export function useKeys(): void {
  const { commands, ui, playhead } = useWorkbench();
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || ui.getState().dialog !== null || ui.getState().paper !== null) return;
      const name =
        plainCommand(event) ??
        (event.ctrlKey || event.metaKey ? commandOfKey(event.key, event.shiftKey) : undefined);
      if (event.key === "F6") {
        event.preventDefault();
        nextRegion(event.shiftKey ? -1 : 1);
      } else if (stepOf(event) !== 0) {
        event.preventDefault();
        playhead.step(stepOf(event));
      } else if (name !== undefined) {
        event.preventDefault();
        commands.run(name);
      }
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [commands, ui, playhead]);
}

function plainCommand(event: KeyboardEvent): CommandName | undefined {
  if (event.key === "F1") return "help";
  const { target } = event;
  const free = target instanceof Element && target.closest(TAKES_SPACE) === null;
  return event.key === " " && free ? "play-pause" : undefined;
}

/** Comma and full stop step the film, except where something is written. */
function stepOf({ key, target, ctrlKey, metaKey, altKey }: KeyboardEvent): -1 | 0 | 1 {
  const writing = target instanceof Element && target.closest("input, textarea, select") !== null;
  if (writing || ctrlKey || metaKey || altKey) return 0;
  return key === "," ? -1 : key === "." ? 1 : 0;
}

function nextRegion(direction: 1 | -1): void {
  const regions = [...document.querySelectorAll<HTMLElement>("[data-region]")];
  const at = regions.findIndex((region) => region.contains(document.activeElement));
  const next = regions[(at + direction + regions.length) % regions.length];
  next?.querySelector<HTMLElement>("[tabindex='0'], button, input, select")?.focus();
}
