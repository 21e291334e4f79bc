/** A finding in words, with its way out as one step that can be taken back. */
import { memo, type ReactNode } from "react";
import { Button } from "react-aria-components";
import type { Finding, Suggestion } from "../../core/review/finding.ts";
import { useWorkbench } from "../shell/workbench.ts";
import { changeEntries, entryFrom } from "../state/entries.ts";
import { Status } from "../ui/Status.tsx";
import { STATIONS, stationOfPart } from "./stations.ts";

/** Findings that came out the same are the same object (state/share.ts): their cards stay. */
export const FindingCard = memo(function FindingCard({
  finding,
  linked,
}: {
  finding: Finding;
  linked: boolean;
}): ReactNode {
  const { ui } = useWorkbench();
  const station = stationOfPart(finding.part);
  const title = STATIONS.find(({ id }) => id === station)?.title ?? "";
  return (
    <li className={`finding finding-${finding.status}`}>
      <div className="finding-head">
        <Status status={finding.status} />
        {linked && (
          <Button className="link" onPress={() => ui.setState({ station })}>
            {title}
          </Button>
        )}
      </div>
      <p className="finding-message">{finding.message}</p>
      {finding.suggestions.map((suggestion) => (
        <Way key={suggestion.label} suggestion={suggestion} />
      ))}
    </li>
  );
});

function Way({ suggestion }: { suggestion: Suggestion }): ReactNode {
  const { page, ui } = useWorkbench();
  const take = (): void => {
    const changes = suggestion.edits.map(({ path, text }) => ({ path, entry: entryFrom(path, text) }));
    page.actions.change((file) => changeEntries(suggestion.label, file, changes));
    ui.setState({ said: `Done: ${suggestion.label}` });
  };
  return (
    <div className="way">
      <p className="way-label">{suggestion.label}</p>
      <Button className="button" onPress={take} aria-label={`Do it: ${suggestion.label}`}>
        Do it
      </Button>
      {suggestion.cost !== null && <p className="way-cost">{suggestion.cost}</p>}
    </div>
  );
}
