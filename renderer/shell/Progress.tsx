/** How far something is that takes a while. */
import type { ReactNode } from "react";
import { ProgressBar } from "react-aria-components";

export function Progress({ label, share }: { label: string; share: number }): ReactNode {
  return (
    <ProgressBar className="progress" aria-label={label} value={100 * share}>
      {({ percentage = 0, valueText }) => (
        <>
          <span className="progress-track">
            <span className="progress-bar" style={{ width: `${percentage}%` }} />
          </span>
          <span>{valueText}</span>
        </>
      )}
    </ProgressBar>
  );
}
