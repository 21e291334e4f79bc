/** The door in one sentence, above everything. */
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { verdictOf } from "../figures/verdict.ts";
import { isOlder } from "../state/page-store.ts";
import { Icon } from "../ui/icons.tsx";
import { usePage, useWorkbench } from "./workbench.ts";

export function VerdictBand(): ReactNode {
  const { ui } = useWorkbench();
  const view = usePage((state) => state.view);
  const faults = usePage((state) => state.faults);
  const failed = usePage((state) => state.failed);
  const older = usePage(isOlder);
  if (view === null) {
    const waiting = faults.length === 0 && failed === null;
    return (
      <div className="verdict" role="status">
        <p className="verdict-sentence">
          {waiting ? "Computing the door…" : "This door cannot be computed until its entries are mended."}
        </p>
      </div>
    );
  }
  const { status, head, sentence, rest } = verdictOf(view);
  return (
    <div
      className={`verdict verdict-${status}`}
      role="status"
      data-older={(older && faults.length > 0) || undefined}
    >
      <p className="verdict-sentence">
        <span className="verdict-head">
          <Icon name={status} /> {head}
        </span>{" "}
        {sentence}{" "}
        {rest !== null && (
          <Button className="link" onPress={() => ui.setState({ station: "verdict" })}>
            {rest}
          </Button>
        )}
      </p>
      {faults.length > 0 && (
        <p className="verdict-older">
          <Icon name="caution" /> As it was before{" "}
          {faults.length === 1 ? "a wrong entry" : `${faults.length} wrong entries`}.{" "}
          <Button className="link" onPress={() => ui.setState({ station: "verdict" })}>
            See what is wrong
          </Button>
        </p>
      )}
    </div>
  );
}
