/** The window without a door. */
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { ExampleList } from "./dialogs/ExampleList.tsx";
import { useWorkbench } from "./workbench.ts";

export function Welcome(): ReactNode {
  const { commands } = useWorkbench();
  return (
    <main className="welcome" data-region="stage">
      <h2>No door on the bench</h2>
      <p>Open a door file, drop one on this window, or start from an example.</p>
      <Button className="button button-main" onPress={() => commands.run("open")}>
        Open a door file…
      </Button>
      <ExampleList />
    </main>
  );
}
