/** The door in one plain sentence, from what was computed. */
import type { FindingStatus } from "../../core/review/finding.ts";
import type { DoorView } from "../state/view.ts";

export interface Verdict {
  /** Of the bolt's outcome; "fail" where anything fails. */
  readonly status: FindingStatus;
  /** One or two words: what becomes of the bolt. */
  readonly head: string;
  readonly sentence: string;
  /** "4 things to mind"; `null` where there is nothing to read. */
  readonly rest: string | null;
}

const seconds = (time: number): string => `${Number(time.toPrecision(time >= 10 ? 3 : 2))} s`;

export function verdictOf(view: DoorView): Verdict {
  const fails = view.findings.filter(({ status }) => status === "fail").length;
  const cautions = view.findings.filter(({ status }) => status === "caution").length;
  const outcome = outcomeWords(view);
  const rest = restWords(fails, cautions);
  if (outcome.status === "ok" && fails > 0) {
    const but = fails === 1 ? "one thing fails" : `${fails} things fail`;
    return { status: "fail", head: "Not yet", sentence: `${outcome.clause}, but ${but}.`, rest };
  }
  return { status: outcome.status, head: outcome.head, sentence: `${outcome.clause}.`, rest };
}

function restWords(fails: number, cautions: number): string | null {
  const things = (count: number, what: string): string[] => (count === 0 ? [] : [`${count} ${what}`]);
  const parts = [...things(fails, fails === 1 ? "fails" : "fail"), ...things(cautions, "to mind")];
  return parts.length === 0 ? null : parts.join(", ");
}

interface OutcomeWords {
  readonly status: FindingStatus;
  readonly head: string;
  /** A sentence without its full stop. */
  readonly clause: string;
}

function say(status: FindingStatus, head: string, clause: string): OutcomeWords {
  return { status, head, clause };
}

function outcomeWords(view: DoorView): OutcomeWords {
  const { relatch, hold } = view;
  if (relatch === null || hold === null) return withoutRelatch(view);
  const shown = seconds(hold.shown);
  switch (relatch.outcome) {
    case "caught":
      return caught(view, shown);
    case "shut out":
      return say(
        "fail",
        "Shut out",
        `The ${shown} hold ends ${tooSoon(view)}: the bolt comes up beside the flap`,
      );
    case "stuck":
      return say(
        "fail",
        "Stuck",
        `The ${shown} hold ends ${tooSoon(view)}: the flap stops with the bolt riding on its edge, unlatched`,
      );
    case "under the animal":
      return say("fail", "Under the animal", `The ${shown} hold ends while the animal is still in the door`);
  }
}

function caught(view: DoorView, shown: string): OutcomeWords {
  const { hold } = view;
  if (hold === null || hold.need === null) {
    const clause = `The bolt catches this time with a ${shown} hold, but no hold is sure: the flap can come to rest where the bolt does not find its slot`;
    return say("fail", "Not sure", clause);
  }
  const spare = hold.shown - hold.need;
  if (spare < 0) {
    const clause = `The bolt catches the flap in passing, ${seconds(-spare)} before it has settled: do not rely on it`;
    return say("fail", "Caught in passing", clause);
  }
  return say(
    "ok",
    "Caught",
    `The ${shown} hold outlasts the swing by ${seconds(spare)}, and the bolt catches the flap`,
  );
}

/** "2.3 s too soon"; "before the flap has settled" where it never does. */
function tooSoon({ hold }: DoorView): string {
  const short = hold === null || hold.need === null ? 0 : hold.need - hold.shown;
  return short > 0 ? `${seconds(short)} too soon` : "before the flap has settled";
}

function withoutRelatch({ door, results }: DoorView): OutcomeWords {
  const rest = results["swing.restTime"]?.value ?? null;
  const swings =
    rest === null
      ? "The flap swings without coming to rest"
      : `The flap comes to rest ${seconds(rest)} after let-go`;
  const missing =
    door.latch === null ? "there is no latch yet to hold it" : "there is no timer yet to hold it unlocked";
  return say("ok", "Swings", `${swings}; ${missing}`);
}
