/** The door in one sentence, above everything. */
import { memo, type ReactNode } from "react";
import { Button } from "react-aria-components";
import { verdictOf } from "../figures/verdict.ts";
import { isOlder } from "../state/page-store.ts";
import { Icon } from "../ui/icons.tsx";
import { usePage, useWorkbench } from "./workbench.ts";

export function VerdictBand(): ReactNode {
  const view = usePage((state) => state.view);
  const faults = usePage((state) => state.faults.length);
  const failed = usePage((state) => state.failed !== null);
  const older = usePage((state) => state.faults.length > 0 && isOlder(state));
  if (view === null) {
    const waiting = faults === 0 && !failed;
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
    <div className={`verdict verdict-${status}`} role="status" data-older={older || undefined}>
      <p className="verdict-sentence">
        <span className="verdict-head">
          <Icon name={status} /> {head}
        </span>{" "}
        {sentence} {rest !== null && <ToVerdicts words={rest} />}
      </p>
      {faults > 0 && (
        <p className="verdict-older">
          <Icon name="caution" /> As it was before{" "}
          {faults === 1 ? "a wrong entry" : `${faults} wrong entries`}.{" "}
          <ToVerdicts words="See what is wrong" />
        </p>
      )}
    </div>
  );
}

/** Leads to the first station, where all of it stands. */
const ToVerdicts = memo(function ToVerdicts({ words }: { readonly words: string }): ReactNode {
  const { ui } = useWorkbench();
  return (
    <Button className="link" onPress={() => ui.setState({ station: "verdict" })}>
      {words}
    </Button>
  );
});
