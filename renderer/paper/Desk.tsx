/** The sheet on the desk: seen as it will be printed, leafed through, near or far. */
import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  type RefObject,
  useEffect,
  useLayoutEffect,
  useRef,
} from "react";
import { Button, ToggleButton } from "react-aria-components";
import { useWorkbench } from "../shell/workbench.ts";
import { useSize } from "../strip/use-size.ts";
import { Icon } from "../ui/icons.tsx";
import type { DocumentView, SheetView } from "../worker/sheet-messages.ts";
import { usePaper, usePaperParts } from "./context.ts";
import { documentAt, PX_PER_MM, scaleOf, sheetAt, zoomFrom } from "./paper-store.ts";
import { sheetElement } from "./sheet-element.ts";
import { useWheel } from "./use-wheel.ts";

export function Desk(): ReactNode {
  const busy = usePaper((state) => state.busy);
  const there = usePaper((state) => state.view !== null);
  return (
    <section className="paper-desk" aria-label="The sheet" aria-busy={busy}>
      <Warning />
      {there ? <Sheet /> : <Nothing />}
      <Said />
    </section>
  );
}

/** What is being written, and what came of it. */
function Said(): ReactNode {
  const said = usePaper((state) => state.writing ?? state.said);
  const trouble = usePaper((state) => state.trouble);
  return (
    <>
      <p className="paper-said" role="status" data-there={said !== "" || undefined}>
        {said}
      </p>
      <p className="paper-said" role="alert" data-there={trouble !== "" || undefined}>
        {trouble !== "" && (
          <>
            <Icon name="caution" /> {trouble}
          </>
        )}
      </p>
    </>
  );
}

/** Nothing to see yet, or a door of which there is no paper. */
function Nothing(): ReactNode {
  const reasons = usePaper((state) => state.reasons);
  if (reasons.length === 0) {
    return (
      <p className="paper-empty" role="status">
        Laying out the sheets…
      </p>
    );
  }
  return (
    <div className="paper-empty" role="alert">
      <p>There is no paper of this door as it is:</p>
      <ul className="reasons">
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </div>
  );
}

/** What speaks against building from these sheets. */
function Warning(): ReactNode {
  const fails = usePaper((state) => state.view?.fails);
  const hold = usePaper((state) => state.view?.hold);
  const { ui } = useWorkbench();
  if (fails === undefined) return null;
  if (fails.length > 0) {
    return (
      <details className="paper-warning" data-fails>
        <summary>
          <span className="status status-fail">
            <Icon name="fail" /> Do not build this yet
          </span>{" "}
          {fails.length === 1 ? "One finding fails" : `${fails.length} findings fail`}
          {hold === null ? ", and no hold is sure" : ""}. The sheets say so too.
        </summary>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reachable */}
        <ul tabIndex={0} aria-label="Findings that fail">
          {fails.map((message) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
      </details>
    );
  }
  if (hold !== "first setting") return null;
  return (
    <p className="paper-warning">
      <span className="status status-caution">
        <Icon name="caution" /> A first setting
      </span>{" "}
      No study has run: the hold claims no reliability.{" "}
      <Button className="link" onPress={() => ui.setState({ paper: null, stage: "study" })}>
        To the study
      </Button>
    </p>
  );
}

function Sheet(): ReactNode {
  const document = usePaper(documentAt);
  const sheet = usePaper(sheetAt);
  const zoom = usePaper((state) => state.zoom);
  const ground = useRef<HTMLDivElement>(null);
  const size = useSize(ground);
  // As paper.css leaves round the sheet.
  const around = 2 * (size?.rem ?? 0);
  const room = { width: (size?.width ?? 0) - around, height: (size?.height ?? 0) - around };
  const scale = sheet === null || size === null ? null : scaleOf(zoom, sheet, room);
  return (
    <>
      <Ground place={ground} fits={zoom === "whole"}>
        {sheet !== null && scale !== null && (
          <Leaf sheet={sheet} scale={scale} title={document?.title ?? ""} />
        )}
        {sheet === null && <p className="paper-empty">{document?.missing}</p>}
      </Ground>
      {document !== null && sheet !== null && scale !== null && (
        <Foot document={document} sheet={sheet} scale={scale} />
      )}
    </>
  );
}

interface GroundProps {
  readonly place: RefObject<HTMLDivElement | null>;
  /** The whole sheet is to be seen: nothing scrolls. */
  readonly fits: boolean;
  readonly children: ReactNode;
}

/** Where the sheet lies: arrows and the wheel leaf while all of it is to be seen, else they move it; so does the hand. */
function Ground({ place, fits, children }: GroundProps): ReactNode {
  const { paper } = usePaperParts();
  const at = usePaper((state) => state.at);
  const hand = useRef<{ x: number; y: number } | null>(null);
  useWheel(place, fits, paper);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another sheet begins at its head.
  useEffect(() => place.current?.scrollTo(0, 0), [place, at]);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (!fits || (event.key !== "ArrowRight" && event.key !== "ArrowLeft")) return;
    event.preventDefault();
    paper.leaf(event.key === "ArrowRight" ? 1 : -1);
  };
  const drag = ({ clientX, clientY, currentTarget }: PointerEvent<HTMLDivElement>): void => {
    if (hand.current === null) return;
    currentTarget.scrollBy(hand.current.x - clientX, hand.current.y - clientY);
    hand.current = { x: clientX, y: clientY };
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a region that scrolls and is reached by Tab
    <div
      ref={place}
      className="paper-ground"
      data-fits={fits || undefined}
      role="group"
      aria-label="Sheet: arrow keys leaf, or move it where it is larger"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reachable
      tabIndex={0}
      onKeyDown={onKeyDown}
      onPointerDown={({ clientX, clientY, button, pointerType }) => {
        if (!fits && button === 0 && pointerType === "mouse") hand.current = { x: clientX, y: clientY };
      }}
      onPointerMove={drag}
      onPointerUp={() => {
        hand.current = null;
      }}
      onPointerLeave={() => {
        hand.current = null;
      }}
    >
      {children}
    </div>
  );
}

function Leaf({ sheet, scale, title }: { sheet: SheetView; scale: number; title: string }): ReactNode {
  const place = useRef<HTMLElement>(null);
  const { svg, widthMm, heightMm, name } = sheet;
  useLayoutEffect(() => {
    const node = place.current;
    if (node === null) return;
    const picture = sheetElement(node.ownerDocument, svg);
    picture.setAttribute("width", "100%");
    picture.setAttribute("height", "100%");
    node.replaceChildren(picture);
  }, [svg]);
  return (
    <figure
      ref={place}
      className="paper-leaf"
      aria-label={`${title}, sheet ${name}`}
      style={{ width: widthMm * PX_PER_MM * scale, height: heightMm * PX_PER_MM * scale }}
    />
  );
}

interface FootProps {
  readonly document: DocumentView;
  readonly sheet: SheetView;
  readonly scale: number;
}

function Foot({ document, sheet, scale }: FootProps): ReactNode {
  const { paper } = usePaperParts();
  const at = usePaper((state) => state.at);
  const zoom = usePaper((state) => state.zoom);
  const { sheets } = document;
  return (
    <div className="paper-foot">
      <div className="paper-leafing">
        <Button className="button button-icon" aria-label="Sheet before" onPress={() => paper.leaf(-1)}>
          <Icon name="more" className="paper-turned" />
        </Button>
        <label className="paper-which">
          <span>Sheet</span>
          <select
            className="entry-input"
            value={at.sheet}
            onChange={({ target }) => paper.goTo(Number(target.value))}
          >
            {sheets.map(({ name }, i) => (
              <option key={name} value={i}>
                {name}
              </option>
            ))}
          </select>
          <span>of {sheets.length}</span>
        </label>
        <Button className="button button-icon" aria-label="Next sheet" onPress={() => paper.leaf(1)}>
          <Icon name="more" />
        </Button>
      </div>
      <p className="paper-scale">
        {sizeWords(sheet)}
        {document.fullSize && !sheet.name.startsWith("guide") ? ", 1 : 1 on paper" : ""}; shown at{" "}
        {Math.round(scale * 100)} %
      </p>
      <div className="paper-zoom">
        <Button
          className="button button-icon"
          aria-label="Farther away"
          onPress={() => paper.zoom(zoomFrom(scale, -1))}
        >
          <Icon name="minus" />
        </Button>
        <ToggleButton className="button" isSelected={zoom === "whole"} onChange={() => paper.zoom("whole")}>
          Whole
        </ToggleButton>
        <ToggleButton className="button" isSelected={zoom === "width"} onChange={() => paper.zoom("width")}>
          Width
        </ToggleButton>
        <Button
          className="button button-icon"
          aria-label="Nearer"
          onPress={() => paper.zoom(zoomFrom(scale, 1))}
        >
          <Icon name="plus" />
        </Button>
      </div>
    </div>
  );
}

function sizeWords({ widthMm, heightMm }: SheetView): string {
  const paper = Math.abs(Math.min(widthMm, heightMm) - 210) < 0.1 ? "A4" : "Letter";
  return widthMm > heightMm ? `${paper}, lying` : paper;
}
