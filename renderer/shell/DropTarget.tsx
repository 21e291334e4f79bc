/** A door file dropped anywhere on the window is opened, a measured swing goes to the trial. */
import { type ReactNode, useEffect, useState } from "react";
import { textOfFile } from "../bridge/pickers.ts";
import { useWorkbench } from "./workbench.ts";

/** Tables of numbers by the ends of their names. */
const MEASURED = /\.(csv|tsv|txt)$/i;

export function DropTarget(): ReactNode {
  const { documents, trials, ui } = useWorkbench();
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
        (text) => {
          if (MEASURED.test(file.name)) {
            trials.load({ name: file.name, text });
            ui.setState({ station: "trial" });
          } else void documents.openFile({ name: file.name, token: null, text });
        },
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
  }, [documents, trials, ui]);
  return over ? <div className="drop">Drop a door file, or a measured swing (CSV)</div> : null;
}
