/** The note at a form's foot: what the input with the focus means and what it falls back to. */
import { createContext, type ReactNode, useContext } from "react";
import { fieldAt } from "../../core/door/schema.ts";

export interface NoteTaker {
  readonly set: (text: string | null) => void;
}

export const NoteContext = createContext<NoteTaker>({ set: () => {} });

interface Note {
  readonly text: string;
  readonly show: () => void;
  readonly hide: () => void;
}

export function useNote(path: string): Note {
  const { set } = useContext(NoteContext);
  const text = noteText(path);
  return { text, show: () => set(text), hide: () => set(null) };
}

/** The schema's sentence about a key, with its default. */
export function noteText(path: string): string {
  const field = fieldAt(path);
  if (field === undefined) return "";
  if (!("default" in field)) return field.doc;
  const fallback = field.default;
  if (fallback.kind === "required") return field.doc;
  const words = fallback.kind === "value" ? String(fallback.value) : fallback.words;
  return words === "" ? field.doc : `${field.doc} Left empty: ${words}.`;
}

export function Note({ text }: { text: string | null }): ReactNode {
  return (
    <p className="form-note" aria-hidden="true">
      {text ?? "Any unit will do: 39 cm, 3/8 in, 6 mN m. Arrow keys nudge."}
    </p>
  );
}
