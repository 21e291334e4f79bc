/** A short word after something was done, for the eye and for those who hear the page. */
import { type ReactNode, useEffect } from "react";
import { useUi, useWorkbench } from "./workbench.ts";

const SHOWN_FOR = 4000;

export function Said(): ReactNode {
  const { ui } = useWorkbench();
  const said = useUi((state) => state.said);
  useEffect(() => {
    if (said === "") return;
    const timer = setTimeout(() => ui.setState({ said: "" }), SHOWN_FOR);
    return () => clearTimeout(timer);
  }, [said, ui]);
  return (
    <div className="said" role="status" data-there={said !== "" || undefined}>
      {said}
    </div>
  );
}
