/** Why something could not be done, or is not to be relied on; told to a screen reader when it comes up. */
import type { ReactNode } from "react";
import { Icon } from "../ui/icons.tsx";

export function Reasons({ reasons }: { reasons: readonly string[] }): ReactNode {
  return (
    <div className="study-reasons" role="status">
      {reasons.map((reason) => (
        <p key={reason} className="study-reason">
          <Icon name="caution" /> <span>{reason}</span>
        </p>
      ))}
    </div>
  );
}
