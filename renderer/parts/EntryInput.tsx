/**
 * One entry of the door file as an input: the text as the person writes it, whatever the unit. Typing reaches the file at
 * once and all of it together is one step; a wrong entry stays and is explained beneath. Arrow keys nudge the number.
 */
import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from "react";
import type { Field } from "../../core/door/field.ts";
import { type DoorFile, fileEntry } from "../../core/door/file.ts";
import { fieldAt } from "../../core/door/schema.ts";
import { usePage, useUi, useWorkbench } from "../shell/workbench.ts";
import { changeEntries, defaultText, entryFrom, entryText } from "../state/entries.ts";
import { nudge, type Reach } from "../state/nudge.ts";
import { TOLERANCES } from "../state/spread-text.ts";
import { faultWords } from "./fault-words.ts";
import { labelInSentence, labelOf, optionLabel } from "./labels.ts";
import { useNote } from "./note.tsx";
import { neededBy } from "./templates.ts";

export interface EntryProps {
  readonly path: string;
  /** Said in place of the key's usual label, for entries of tables. */
  readonly label?: string;
  /** Only for those who hear the page, as in tables with headings. */
  readonly labelUnseen?: boolean;
  /** What holds where nothing is written, for keys that the schema has no default of. */
  readonly fallback?: string;
  /** The element that says more about the key, where the schema has no sentence. */
  readonly noteId?: string;
}

/** The input that suits the key. */
export function Entry(props: EntryProps): ReactNode {
  const field = fieldAt(props.path);
  if (field?.kind === "choice") return <Choice {...props} options={field.options} />;
  if (field?.kind === "flag") return <Choice {...props} options={["true", "false"]} />;
  return <TextEntry {...props} />;
}

/** How long typing must pause before a wrong entry is explained, ms: half-typed is not wrong. */
const PAUSE = 700;

function TextEntry({ path, label, labelUnseen = false, fallback, noteId }: EntryProps): ReactNode {
  const { page } = useWorkbench();
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [paused, setPaused] = useState(true);
  const note = useNote(path);
  useWanted(path, input);

  const shown = usePage(({ document }) => (document === null ? "" : shownText(document.file, path, typed)));
  const fault = useFault(path);
  const explained = fault !== null && (typed === null || paused) ? fault : null;
  useEffect(() => {
    if (typed === null || paused) return;
    const timer = setTimeout(() => setPaused(true), PAUSE);
    return () => clearTimeout(timer);
  }, [typed, paused]);

  const gesture = `entry ${path}`;
  const write = (text: string): void => {
    setTyped(text);
    setPaused(false);
    const name = `Change ${labelInSentence(path)} to ${text.trim() === "" ? "nothing" : text.trim()}`;
    page.actions.change((f) => changeEntries(name, f, [{ path, entry: entryFrom(path, text) }]), gesture);
  };
  const finish = (): void => {
    setTyped(null);
    page.actions.endGesture();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Enter") finish();
    else if (event.key === "Escape") {
      if (page.store.getState().history.gesture === gesture) page.actions.undo();
      finish();
    } else if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      const next = isNudged(path) ? nudge(shown, event.key === "ArrowUp" ? 1 : -1, reachOf(event)) : null;
      if (next === null) return;
      event.preventDefault();
      write(next);
    }
  };

  return (
    <div className="entry" data-wrong={explained !== null || undefined}>
      <label htmlFor={id} className={labelUnseen ? "unseen" : "entry-label"}>
        {label ?? labelOf(path)}
      </label>
      <input
        ref={input}
        id={id}
        className="entry-input"
        data-path={path}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={shown}
        placeholder={fallback ?? defaultText(path)}
        list={path === "flap.material" ? "materials" : undefined}
        aria-invalid={explained !== null}
        aria-describedby={`${noteId ?? `${id}-note`}${explained === null ? "" : ` ${id}-fault`}`}
        onChange={(event) => write(event.target.value)}
        onKeyDown={onKeyDown}
        onFocus={note.show}
        onBlur={() => {
          finish();
          note.hide();
        }}
      />
      {noteId === undefined && (
        <span id={`${id}-note`} className="unseen">
          {note.text}
        </span>
      )}
      {explained !== null && (
        <p id={`${id}-fault`} className="entry-fault" role="alert">
          {faultWords(explained)}
        </p>
      )}
    </div>
  );
}

/** What the person is typing while it still stands for the file's entry; else what the file says. */
function shownText(file: DoorFile, path: string, typed: string | null): string {
  const inFile = fileEntry(file, path);
  if (typed !== null && JSON.stringify(entryFrom(path, typed)) === JSON.stringify(inFile)) return typed;
  return entryText(file, path);
}

function isNudged(path: string): boolean {
  const kind: Field["kind"] | undefined = fieldAt(path)?.kind;
  return kind === "quantity" || kind === "number";
}

function reachOf(event: KeyboardEvent): Reach {
  if (event.shiftKey) return "far";
  return event.altKey ? "near" : "usual";
}

function Choice({
  path,
  label,
  labelUnseen = false,
  options,
}: EntryProps & { options: readonly string[] }): ReactNode {
  const { page } = useWorkbench();
  const select = useRef<HTMLSelectElement>(null);
  const id = useId();
  const note = useNote(path);
  const fault = useFault(path);
  useWanted(path, select);
  const inFile = usePage(({ document }) => (document === null ? "" : entryText(document.file, path)));
  const shown = inFile === "" ? defaultText(path) : inFile;
  const words = (option: string) =>
    option === "true" ? "yes" : option === "false" ? "no" : optionLabel(path, option);

  return (
    <div className="entry" data-wrong={fault !== null || undefined}>
      <label htmlFor={id} className={labelUnseen ? "unseen" : "entry-label"}>
        {label ?? labelOf(path)}
      </label>
      <select
        ref={select}
        id={id}
        className="entry-input"
        data-path={path}
        value={shown}
        aria-invalid={fault !== null}
        aria-describedby={`${id}-note${fault === null ? "" : ` ${id}-fault`}`}
        onChange={({ target: { value } }) => {
          const name = `Change ${labelInSentence(path)} to ${words(value)}`;
          page.actions.change((f) =>
            changeEntries(name, f, [{ path, entry: entryFrom(path, value) }, ...neededBy(f, path, value)]),
          );
        }}
        onFocus={note.show}
        onBlur={note.hide}
      >
        {!options.includes(shown) && <option value={shown}>{shown}</option>}
        {options.map((option) => (
          <option key={option} value={option}>
            {words(option)}
          </option>
        ))}
      </select>
      <span id={`${id}-note`} className="unseen">
        {note.text}
      </span>
      {fault !== null && (
        <p id={`${id}-fault`} className="entry-fault" role="alert">
          {faultWords(fault)}
        </p>
      )}
    </div>
  );
}

/** What is wrong with an entry; with a tolerance's ends too, which stand in one input. */
function useFault(path: string) {
  const within = path.startsWith(TOLERANCES) ? `${path}.` : null;
  return usePage(
    (state) =>
      state.faults.find(
        (fault) => fault.path === path || (within !== null && fault.path.startsWith(within)),
      ) ?? null,
  );
}

/** Takes the focus when a finding, a fault or a formula leads here. */
function useWanted(path: string, element: { current: HTMLElement | null }): void {
  const { ui } = useWorkbench();
  const wanted = useUi((state) => state.wanted === path);
  useEffect(() => {
    if (!wanted) return;
    element.current?.focus();
    ui.setState({ wanted: null });
  }, [wanted, ui, element]);
}
