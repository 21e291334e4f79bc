/** A popover of this page: menus and explanations all stand in the same place of the document. */
import type { ReactNode } from "react";
import { Popover, type PopoverProps } from "react-aria-components";
import { overlayPlace } from "./overlays.ts";

export function Overlay(props: PopoverProps): ReactNode {
  const place = overlayPlace();
  return (
    <Popover
      className="popover"
      {...(place === undefined ? {} : { UNSTABLE_portalContainer: place })}
      {...props}
    />
  );
}
