/** A verdict's sign and word: never a colour alone. */
import type { ReactNode } from "react";
import type { FindingStatus } from "../../core/review/finding.ts";
import { Icon } from "./icons.tsx";

export const STATUS_WORDS: Readonly<Record<FindingStatus, string>> = {
  ok: "good",
  caution: "mind this",
  fail: "fails",
};

/** `quiet` keeps the word for those who hear the page. */
export function Status({ status, quiet = false }: { status: FindingStatus; quiet?: boolean }): ReactNode {
  return (
    <span className={`status status-${status}`}>
      <Icon name={status} />
      <span className={quiet ? "unseen" : "status-word"}>{STATUS_WORDS[status]}</span>
    </span>
  );
}
