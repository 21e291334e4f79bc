/** Which paper, which units, which symbols. */
import type { ReactNode } from "react";
import { symbolsFor } from "../../core/sheet/symbols-for.ts";
import { useSettings, useWorkbench } from "../shell/workbench.ts";
import { Segments, type SegmentsProps } from "../ui/Segments.tsx";

export function Choices(): ReactNode {
  const { settings } = useWorkbench();
  const { units, paper, symbols } = useSettings((state) => state);
  return (
    <div className="paper-choices">
      <Choice
        label="Paper"
        items={[
          ["a4", "A4"],
          ["letter", "Letter"],
        ]}
        value={paper ?? (units === "inch" ? "letter" : "a4")}
        onChange={(to) => settings.setState({ paper: to })}
      />
      <Choice
        label="Figures"
        items={[
          ["metric", "mm"],
          ["inch", "inch"],
        ]}
        value={units}
        onChange={(to) => settings.setState({ units: to })}
      />
      <Choice
        label="Symbols"
        items={[
          ["iec", "IEC"],
          ["ieee", "IEEE"],
        ]}
        value={symbols ?? symbolsFor(units)}
        onChange={(to) => settings.setState({ symbols: to })}
      />
    </div>
  );
}

function Choice<T extends string>(props: SegmentsProps<T>): ReactNode {
  return (
    <div className="paper-choice">
      <span aria-hidden="true">{props.label}</span>
      <Segments {...props} />
    </div>
  );
}
