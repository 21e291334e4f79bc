/** One of a few, side by side. */
import type { ReactNode } from "react";
import { ToggleButton, ToggleButtonGroup } from "react-aria-components";

export interface SegmentsProps<T extends string> {
  readonly label: string;
  readonly items: readonly (readonly [T, string])[];
  /** One of the items, or none of them. */
  readonly value: T;
  readonly onChange: (value: T) => void;
}

export function Segments<T extends string>({ label, items, value, onChange }: SegmentsProps<T>): ReactNode {
  return (
    <ToggleButtonGroup
      className="segments"
      aria-label={label}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[value]}
      onSelectionChange={(keys) => {
        const next = items.find(([id]) => keys.has(id));
        if (next !== undefined) onChange(next[0]);
      }}
    >
      {items.map(([id, title]) => (
        <ToggleButton key={id} id={id} className="segment">
          {title}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}
