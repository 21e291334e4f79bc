/** What is drawn of a picture: the newest while it is on the screen, the last one drawn while it is scrolled away. */
import { type RefObject, useEffect, useRef, useState } from "react";

/** A picture is drawn when it comes as near as this to the screen's edge. */
const NEAR = "200px";

/** `null` until the element is on the screen for the first time. */
export function useWhileSeen<T>(element: RefObject<HTMLElement | null>, value: T): T | null {
  const [seen, setSeen] = useState(false);
  const drawn = useRef<T | null>(null);
  useEffect(() => {
    if (element.current === null) return;
    const observer = new IntersectionObserver(
      (entries) => setSeen(entries[entries.length - 1].isIntersecting),
      { rootMargin: NEAR },
    );
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  if (seen) drawn.current = value;
  return drawn.current;
}
