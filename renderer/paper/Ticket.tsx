/** What can be done with the document shown: printed, or saved as the files that fit it. */
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { stem } from "../export/exports.ts";
import { useWorkbench } from "../shell/workbench.ts";
import type { DocumentView, SheetTask, SheetView } from "../worker/sheet-messages.ts";
import { usePaper, usePaperParts } from "./context.ts";
import { labelOf, typeOf } from "./files.ts";
import { countOf } from "./Index.tsx";
import { documentAt, sheetAt } from "./paper-store.ts";
import { sheetPng } from "./picture.ts";

export function Ticket(): ReactNode {
  const document = usePaper(documentAt);
  const sheet = usePaper(sheetAt);
  return (
    <div className="paper-ticket">
      {document !== null && sheet !== null && (
        <>
          <Print document={document} />
          <Files document={document} sheet={sheet} />
        </>
      )}
      {document !== null && <Archive />}
    </div>
  );
}

function Print({ document }: { document: DocumentView }): ReactNode {
  const { ui } = useWorkbench();
  const { paper } = usePaperParts();
  const all = usePaper(
    (state) => state.view?.documents.reduce((sum, { sheets }) => sum + sheets.length, 0) ?? 0,
  );
  const print = (range: "document" | "all"): void => {
    paper.range(range);
    ui.setState({ paper: "print" });
  };
  const own = document.sheets.length;
  return (
    <section aria-label="Print">
      <div className="paper-files">
        <Button className="button button-main" onPress={() => print("document")}>
          Print {own === 1 ? "this sheet" : countOf(own)}…
        </Button>
        <Button className="button" onPress={() => print("all")} aria-label={`Print all ${countOf(all)}`}>
          All {all}…
        </Button>
      </div>
      <p className="paper-note">
        {document.fullSize
          ? "Full size: print at 100 %, no margins, never fitted to the page. Lay a rule on the 100 mm scale before you drill. If it is off, print the PDF at its actual size."
          : "At 100 %, no margins."}
      </p>
    </section>
  );
}

/** Files of the whole document, and of the sheet shown. */
function Files({ document, sheet }: { document: DocumentView; sheet: SheetView }): ReactNode {
  const { client } = usePaperParts();
  const own = (ending: string): string =>
    `${document.name}${document.sheets.length === 1 ? "" : `-${sheet.name.replaceAll(" ", "-")}`}.${ending}`;
  return (
    <section aria-label="Save">
      <h3>Save</h3>
      <div className="paper-files">
        {document.files.map((name) => (
          <Save key={name} name={name} label={labelOf(name)} make={(task) => client.file(task, name)} />
        ))}
      </div>
      <h4>{document.sheets.length === 1 ? "As a picture" : `This sheet (${sheet.name}) as a picture`}</h4>
      <div className="paper-files">
        {!document.files.includes(own("svg")) && (
          <Save
            name={own("svg")}
            label="SVG"
            make={(task) => client.sheet(task, document.name, sheet.name, false)}
          />
        )}
        <Save
          name={own("png")}
          label="PNG"
          make={async (task) => sheetPng(await client.sheet(task, document.name, sheet.name, true), sheet)}
        />
      </div>
    </section>
  );
}

interface SaveProps {
  readonly name: string;
  readonly label: string;
  readonly make: (task: SheetTask) => Promise<Uint8Array>;
}

function Save({ name, label, make }: SaveProps): ReactNode {
  const { bridge, page } = useWorkbench();
  const { paper } = usePaperParts();
  const write = (): void =>
    void paper.write(`Writing ${name}…`, async (task) =>
      bridge.saveBytes(`${stem(page)}-${name}`, await make(task), typeOf(name)),
    );
  return (
    <Button className="button button-small" aria-label={`Save ${name}`} onPress={write}>
      {label}
    </Button>
  );
}

function Archive(): ReactNode {
  const { bridge, page } = useWorkbench();
  const { paper, client } = usePaperParts();
  const write = (): void => {
    const folder = `${stem(page)}-build`;
    void paper.write("Writing all sheets and data…", async (task) =>
      bridge.saveBytes(`${folder}.zip`, await client.archive(task, folder), "application/zip"),
    );
  };
  return (
    <section aria-label="Everything">
      <Button className="button" onPress={write}>
        {" "}
        Everything as one ZIP…
      </Button>
    </section>
  );
}
