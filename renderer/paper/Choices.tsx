/** Which paper, which units, which symbols. */
import type { ReactNode } from "react";
import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import { symbolsFor } from "../../core/sheet/symbols-for.ts";
import { useSettings, useWorkbench } from "../shell/workbench.ts";

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
        onChoose={(to) => settings.setState({ paper: to })}
      />
      <Choice
        label="Figures"
        items={[
          ["metric", "mm"],
          ["inch", "inch"],
        ]}
        value={units}
        onChoose={(to) => settings.setState({ units: to })}
      />
      <Choice
        label="Symbols"
        items={[
          ["iec", "IEC"],
          ["ieee", "IEEE"],
        ]}
        value={symbols ?? symbolsFor(units)}
        onChoose={(to) => settings.setState({ symbols: to })}
      />
    </div>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly items: readonly (readonly [T, string])[];
  readonly value: T;
  readonly onChoose: (value: T) => void;
}

function Choice<T extends string>({ label, items, value, onChoose }: ChoiceProps<T>): ReactNode {
  return (
    <div className="paper-choice">
      <span aria-hidden="true">{label}</span>
      <ToggleButtonGroup
        className="segments"
        aria-label={label}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[value]}
        onSelectionChange={(keys) => {
          const next = items.find(([id]) => keys.has(id));
          if (next !== undefined) onChoose(next[0]);
        }}
      >
        {items.map(([id, title]) => (
          <ToggleButton key={id} id={id} className="segment">
            {title}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
    </div>
  );
}
