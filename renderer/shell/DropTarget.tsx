/** A door file dropped anywhere on the window is opened. */
import { type ReactNode, useEffect, useState } from "react";
import { textOfFile } from "../bridge/pickers.ts";
import { useWorkbench } from "./workbench.ts";

export function DropTarget(): ReactNode {
  const { documents, ui } = useWorkbench();
  const [over, setOver] = useState(false);
  useEffect(() => {
    const holdsFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes("Files") ?? false;
    const onOver = (event: DragEvent): void => {
      if (!holdsFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent): void => {
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file === undefined) return;
      event.preventDefault();
      textOfFile(file).then(
        (text) => documents.openFile({ name: file.name, token: null, text }),
        (error: Error) =>
          ui.setState({
            dialog: { kind: "notice", title: `${file.name} could not be opened`, reasons: [error.message] },
          }),
      );
    };
    window.addEventListener("dragover", onOver);
    window.addEventListener("dragleave", onLeave);
    window.addEventListener("drop", onDrop);
    return () => {
      window.removeEventListener("dragover", onOver);
      window.removeEventListener("dragleave", onLeave);
      window.removeEventListener("drop", onDrop);
    };
  }, [documents, ui]);
  return over ? <div className="drop">Drop the door file to open it</div> : null;
}
