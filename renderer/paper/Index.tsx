/** The documents of the set, one below the other; what is missing says why. */
import type { ReactNode } from "react";
import type { DocumentView } from "../worker/sheet-messages.ts";
import { usePaper, usePaperParts } from "./context.ts";

export function Index(): ReactNode {
  const documents = usePaper((state) => state.view?.documents);
  const shown = usePaper((state) => state.at.document);
  if (documents === undefined) return null;
  return (
    <nav className="paper-index" aria-label="Documents">
      <ul>
        {documents.map((document) => (
          <li key={document.name}>
            <Entry document={document} shown={document.name === shown} />
          </li>
        ))}
      </ul>
    </nav>
  );
}

function Entry({ document, shown }: { document: DocumentView; shown: boolean }): ReactNode {
  const { paper } = usePaperParts();
  const { name, title, what, sheets, missing } = document;
  return (
    <button
      type="button"
      className="paper-entry"
      data-document={name}
      data-missing={missing !== null || undefined}
      aria-current={shown ? "page" : undefined}
      onClick={() => paper.show(name)}
    >
      <span className="paper-entry-title">{title}</span>
      <span className="paper-entry-count">{missing === null ? countOf(sheets.length) : "none"}</span>
      <span className="paper-entry-what">{missing ?? what}</span>
    </button>
  );
}

export const countOf = (sheets: number): string => (sheets === 1 ? "1 sheet" : `${sheets} sheets`);
