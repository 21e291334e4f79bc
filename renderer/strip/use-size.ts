/** An element's size and the text's size, followed as they change. */
import { type RefObject, useLayoutEffect, useState } from "react";

export interface Size {
  /** Content box, px. */
  readonly width: number;
  readonly height: number;
  /** The page's root font size, px: the text-size setting changes it. */
  readonly rem: number;
}

/** `null` before the element is on the page. */
export function useSize(element: RefObject<HTMLElement | null>): Size | null {
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const node = element.current;
    if (node === null) return;
    const read = (): void => {
      const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      const next = { width: node.clientWidth, height: node.clientHeight, rem };
      setSize((old) => (old !== null && same(old, next) ? old : next));
    };
    const sizes = new ResizeObserver(read);
    sizes.observe(node);
    // The text-size setting may leave the box as it is.
    const styles = new MutationObserver(read);
    styles.observe(document.documentElement, { attributes: true, attributeFilter: ["style", "class"] });
    read();
    return () => {
      sizes.disconnect();
      styles.disconnect();
    };
  }, [element]);
  return size;
}

function same(a: Size, b: Size): boolean {
  return a.width === b.width && a.height === b.height && a.rem === b.rem;
}
