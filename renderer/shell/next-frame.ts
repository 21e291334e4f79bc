/** For what is dear to draw: it follows a frame behind what is said and drawn in few strokes. */
import { startTransition, useEffect, useRef, useState } from "react";

/** The value, as of the frame before; of many in one frame only the last. */
export function useNextFrame<T>(value: T): T {
  const [shown, setShown] = useState(value);
  const latest = useRef(value);
  const asked = useRef(false);
  useEffect(() => {
    latest.current = value;
    if (asked.current || Object.is(shown, value)) return;
    asked.current = true;
    // The frame's own callbacks come before it is painted, a timer after.
    requestAnimationFrame(() =>
      setTimeout(() => {
        asked.current = false;
        startTransition(() => setShown(latest.current));
      }),
    );
  }, [value, shown]);
  return shown;
}
