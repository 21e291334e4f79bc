/** The page's face, for what is drawn or measured outside the page's own layout. */
import { useEffect, useMemo, useState } from "react";

/** Whether the page's face is loaded: a canvas drawn before has another in its place, and widths measured before are wrong. */
export function useFaceLoaded(): boolean {
  const [loaded, setLoaded] = useState(() => document.fonts.check(`16px ${readFace()}`));
  useEffect(() => {
    let gone = false;
    void document.fonts.load(`16px ${readFace()}`).then(() => {
      if (!gone) setLoaded(true);
    });
    return () => {
      gone = true;
    };
  }, []);
  return loaded;
}

/** The page's face for a canvas; another one until it is loaded. */
export function useFace(): string {
  const loaded = useFaceLoaded();
  return useMemo(() => (loaded ? readFace() : "sans-serif"), [loaded]);
}

/** The page's face, for canvases. To ask for it has the page's styles worked out anew. */
export function readFace(): string {
  return getComputedStyle(document.body).fontFamily;
}
