/** The first station: everything the computation finds, worst first, and what is wrong with the file's entries. */
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import type { DoorFault } from "../../core/door/fault.ts";
import { fileEntry } from "../../core/door/file.ts";
import { fieldAt } from "../../core/door/schema.ts";
import { usePage, useWorkbench } from "../shell/workbench.ts";
import { changeEntries } from "../state/entries.ts";
import { findingsOf } from "../state/page-store.ts";
import { TOLERANCES } from "../state/spread-text.ts";
import { FindingCard } from "./FindingCard.tsx";
import { labelInSentence } from "./labels.ts";
import { stationOfPath } from "./stations.ts";

export function Verdicts(): ReactNode {
  const view = usePage((state) => state.view);
  const faults = usePage((state) => state.faults);
  const failed = usePage((state) => state.failed);
  const findings = usePage(findingsOf);
  const open = findings.filter(({ status }) => status !== "ok");
  const good = findings.filter(({ status }) => status === "ok");
  return (
    <>
      {failed !== null && (
        <p className="finding finding-fail">
          The computation broke: {failed}. That is a fault of the program; your file is as you wrote it.
        </p>
      )}
      {faults.length > 0 && (
        <section>
          <h3>{faults.length === 1 ? "One entry to mend" : `${faults.length} entries to mend`}</h3>
          <ul className="findings">
            {faults.map((fault) => (
              <FaultCard key={`${fault.path} ${fault.message}`} fault={fault} />
            ))}
          </ul>
        </section>
      )}
      {view !== null && open.length === 0 && faults.length === 0 && (
        <p className="all-good">Nothing fails and nothing is near its limit.</p>
      )}
      <ul className="findings">
        {open.map((finding) => (
          <FindingCard key={finding.id} finding={finding} linked />
        ))}
      </ul>
      {good.length > 0 && (
        <details className="more">
          <summary>{good.length} things are good</summary>
          <ul className="findings">
            {good.map((finding) => (
              <FindingCard key={finding.id} finding={finding} linked />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function FaultCard({ fault }: { fault: DoorFault }): ReactNode {
  const { page, ui } = useWorkbench();
  const { path } = fault;
  const station = stationOfPath(path);
  const known = fieldAt(path) !== undefined;
  const spreads = path.startsWith(TOLERANCES) && fieldAt(path.slice(TOLERANCES.length)) !== undefined;
  const stands = usePage(({ document }) => document !== null && fileEntry(document.file, path) !== undefined);
  return (
    <li className="finding finding-fail">
      <p className="finding-message">{fault.message}</p>
      {known && station !== undefined && (
        <Button className="button" onPress={() => ui.setState({ station, wanted: path })}>
          Go to {labelInSentence(path)}
        </Button>
      )}
      {spreads && (
        <Button className="button" onPress={() => ui.setState({ stage: "study", wanted: path })}>
          Go to its spread
        </Button>
      )}
      {!known && stands && (
        <Button
          className="button"
          onPress={() =>
            page.actions.change((f) => changeEntries(`Take out ${path}`, f, [{ path, entry: undefined }]))
          }
        >
          Take it out of the file
        </Button>
      )}
    </li>
  );
}
