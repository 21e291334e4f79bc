/** The doors to start from. */
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { EXAMPLES } from "../../examples.ts";
import { useWorkbench } from "../workbench.ts";

export function ExampleList({ onChosen = () => {} }: { onChosen?: () => void }): ReactNode {
  const { documents } = useWorkbench();
  if (EXAMPLES.length === 0) return <p>No examples came with this build.</p>;
  return (
    <ul className="examples">
      {EXAMPLES.map(({ id, name, notes, text }) => (
        <li key={id}>
          <Button
            className="example"
            onPress={() => {
              onChosen();
              void documents.startFrom(id, text);
            }}
          >
            <span className="example-name">{name}</span>
            <span className="example-notes">{notes}</span>
          </Button>
        </li>
      ))}
    </ul>
  );
}
