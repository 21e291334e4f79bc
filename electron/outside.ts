/** Doors opened from outside wait here until the page listens. */
import type { OpenedDoor } from "./bridge.ts";

export interface OutsideDoors {
  readonly open: (path: string) => void;
  /** The page listens from now on. */
  readonly pageReady: () => void;
  /** The page is gone or loads anew. */
  readonly pageGone: () => void;
}

/**
 * @param read reads a door the person opened
 * @param deliver hands it to the page
 * @param complain tells the person what could not be read
 */
export function createOutsideDoors(
  read: (path: string) => Promise<OpenedDoor>,
  deliver: (door: OpenedDoor) => void,
  complain: (message: string) => void,
): OutsideDoors {
  let ready = false;
  let waiting: readonly string[] = [];
  const hand = (path: string): void => {
    read(path).then(deliver, (error: unknown) =>
      complain(error instanceof Error ? error.message : String(error)),
    );
  };
  return {
    open: (path) => {
      if (ready) hand(path);
      else waiting = [...waiting, path];
    },
    pageReady: () => {
      ready = true;
      const paths = waiting;
      waiting = [];
      for (const path of paths) hand(path);
    },
    pageGone: () => {
      ready = false;
    },
  };
}
