/** Above the drawing: what comes of the hold shown, in words, and the zoom of the time axis. */
import type { DoorView } from "../state/view.ts";
import { OutcomeSign } from "./OutcomeSign.tsx";
import { lookAt, outcomeSentence } from "./outcomes.ts";

export function StripHead({
  view,
  hold,
  pinned,
  onZoom,
  onFit,
  fitted,
}: {
  view: DoorView;
  hold: number | null;
  pinned: boolean;
  onZoom: (factor: number) => void;
  onFit: () => void;
  fitted: boolean;
}) {
  return (
    <header className="strip-head">
      <Verdict view={view} hold={hold} />
      {pinned && (
        <span className="strip-key">
          <svg viewBox="0 0 24 8" aria-hidden="true">
            <path className="strip-line strip-line--pinned" d="M0 4H24" />
          </svg>
          pinned
        </span>
      )}
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is for a form's entries. */}
      <div className="strip-zoom" role="group" aria-label="Time axis">
        <button
          type="button"
          onClick={() => onZoom(1.5)}
          aria-label="Show more time"
          title="Show more time (−)"
        >
          −
        </button>
        <button
          type="button"
          onClick={() => onZoom(1 / 1.5)}
          aria-label="Show less time"
          title="Show less time (+)"
        >
          +
        </button>
        <button type="button" onClick={onFit} disabled={fitted} title="Show the whole passage (0)">
          Fit
        </button>
      </div>
    </header>
  );
}

function Verdict({ view, hold }: { view: DoorView; hold: number | null }) {
  const look = hold === null ? null : lookAt(view, hold);
  if (look === null || hold === null) {
    return <p className="strip-verdict">{view.hold === null ? NO_TIMER : NO_LATCH}</p>;
  }
  const { id, word, outcome } = look;
  return (
    <p className="strip-verdict" data-outcome={outcome}>
      <OutcomeSign look={look} />
      <strong className={`strip-word--${id}`}>{word}</strong> <span>{outcomeSentence(view, hold)}</span>
    </p>
  );
}

const NO_TIMER = "No timer: nothing ends the hold, the bolt stays withdrawn.";
const NO_LATCH = "No latch: there is no bolt to catch the flap.";
