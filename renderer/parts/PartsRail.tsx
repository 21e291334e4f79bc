/** The parts as marks along a plumb line, each with the worst of its verdicts. */
import type { KeyboardEvent, ReactNode } from "react";
import { useShallow } from "zustand/react/shallow";
import type { Finding, FindingStatus } from "../../core/review/finding.ts";
import { usePage, useUi, useWorkbench } from "../shell/workbench.ts";
import { findingsOf, type PageState } from "../state/page-store.ts";
import { STATUS_WORDS, Status } from "../ui/Status.tsx";
import { STATIONS, type Station, stationOfPath } from "./stations.ts";

export function PartsRail(): ReactNode {
  const { ui } = useWorkbench();
  const current = useUi((state) => state.station);
  const worst = usePage(useShallow(worstByStation));

  const onKeyDown = (event: KeyboardEvent): void => {
    const at = STATIONS.findIndex(({ id }) => id === current);
    const to = {
      ArrowDown: at + 1,
      ArrowRight: at + 1,
      ArrowUp: at - 1,
      ArrowLeft: at - 1,
      Home: 0,
      End: STATIONS.length - 1,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = STATIONS[Math.max(0, Math.min(STATIONS.length - 1, to))];
    ui.setState({ station: next.id });
    document.getElementById(`tab-${next.id}`)?.focus();
  };

  return (
    <div
      className="rail"
      role="tablist"
      aria-label="Parts of the door"
      aria-orientation="vertical"
      onKeyDown={onKeyDown}
    >
      {STATIONS.map(({ id, title, short = title }, index) => (
        <button
          key={id}
          type="button"
          role="tab"
          id={`tab-${id}`}
          className="rail-stop"
          aria-selected={id === current}
          aria-controls="station-panel"
          tabIndex={id === current ? 0 : -1}
          onClick={() => ui.setState({ station: id })}
        >
          <span className={`rail-mark rail-${worst[index] ?? "none"}`}>
            {worst[index] !== null && <Status status={worst[index]} quiet />}
          </span>
          <span className="rail-name">{short}</span>
          {worst[index] !== null && worst[index] !== "ok" && (
            <span className="rail-word" aria-hidden="true">
              {STATUS_WORDS[worst[index]]}
            </span>
          )}
        </button>
      ))}
      <svg className="rail-bob" viewBox="0 0 16 24" aria-hidden="true">
        <path d="M8 0v4M4 5h8l-1 9-3 9-3-9Z" />
      </svg>
    </div>
  );
}

const RANK: Readonly<Record<FindingStatus, number>> = { ok: 0, caution: 1, fail: 2 };

/** The worst of each station, a wrong entry of the file included. */
function worstByStation(state: PageState): (FindingStatus | null)[] {
  const findings = findingsOf(state);
  const wrong = new Set(state.faults.map(({ path }) => stationOfPath(path)));
  return STATIONS.map((station) => (wrong.has(station.id) ? "fail" : worstOf(findings, station)));
}

/** `null` where nothing was judged. The verdict's own mark is the worst of all. */
function worstOf(findings: readonly Finding[], station: Station): FindingStatus | null {
  const own =
    station.id === "verdict" ? findings : findings.filter(({ part }) => station.parts.includes(part));
  return own.reduce<FindingStatus | null>(
    (worst, { status }) => (worst === null || RANK[status] > RANK[worst] ? status : worst),
    null,
  );
}
