/** A picture with its title, legend, readings and ways out. */
import { type PointerEvent, type ReactNode, useCallback, useMemo, useRef, useState } from "react";
import { readFace } from "../strip/face.ts";
import { legendOf } from "./draw.ts";
import type { Colours, Figure } from "./figure.ts";
import { Swatch } from "./Swatch.tsx";
import { copyText, figurePng, figureSvg, measureWith, type SaveBytes } from "./write-out.ts";

interface Props {
  readonly figure: Figure;
  readonly colours: Colours;
  /** Name of the door, for file names. */
  readonly door: string;
  readonly save: SaveBytes;
  /** The numbers, for the clipboard. */
  readonly table: () => string;
  /** The figure in a sentence, for those who do not see it. */
  readonly summary: string;
  /** What a hovered sample reads: the place first, then values by the legend's labels. */
  readonly read: (index: number) => { readonly place: string; readonly values: ReadonlyMap<string, string> };
  readonly children: (onIndex: (index: number | null) => void) => ReactNode;
  readonly tools?: ReactNode;
  readonly beside?: ReactNode;
}

export function PlotCard({ figure, colours, read, children, tools, beside, summary, ...out }: Props) {
  const entries = useMemo(() => legendOf(figure), [figure]);
  const words = useRef<HTMLParagraphElement>(null);
  // Readings follow the pointer outside React: nothing else of the page changes with them.
  const onIndex = useCallback(
    (index: number | null) => {
      if (words.current === null) return;
      words.current.hidden = index === null;
      if (index === null) return;
      const { place, values } = read(index);
      words.current.textContent = [
        place,
        ...Array.from(values, ([label, value]) => `${label} ${value}`),
      ].join("\n");
    },
    [read],
  );
  return (
    <figure className="plot">
      <figcaption className="plot-head">
        <h3>
          <span>{figure.title}</span> {figure.note !== "" && <small>{figure.note}</small>}
        </h3>
        {tools}
        <WaysOut figure={figure} colours={colours} {...out} />
      </figcaption>
      <ul className="plot-legend">
        {entries.map((entry) => (
          <li key={entry.label}>
            <Swatch entry={entry} />
            {entry.label}
          </li>
        ))}
      </ul>
      <p className="strip-unseen">{summary}</p>
      <div className="plot-body">
        <div className="plot-place" onPointerMove={(event) => placeWords(event, words.current)}>
          {children(onIndex)}
          <p className="plot-reading" ref={words} hidden />
        </div>
        {beside}
      </div>
    </figure>
  );
}

/** The readings stand on the side that the pointer is not on. */
function placeWords(event: PointerEvent<HTMLElement>, words: HTMLElement | null): void {
  if (words === null) return;
  const { left, width } = event.currentTarget.getBoundingClientRect();
  words.dataset.side = event.clientX - left > width / 2 ? "left" : "right";
}

function WaysOut({
  figure,
  colours,
  door,
  save,
  table,
}: Pick<Props, "figure" | "colours" | "door" | "save" | "table">) {
  const [said, setSaid] = useState("");
  const name = `${door}-${figure.id}`;
  const doing = (work: () => Promise<string>): void => {
    work().then(setSaid, (error: unknown) => setSaid(error instanceof Error ? error.message : String(error)));
  };
  const saved = (file: string | null): string => (file === null ? "" : "saved");
  const face = (): string => readFace();
  return (
    <div className="plot-out">
      <output>{said}</output>
      <button
        type="button"
        onClick={() =>
          doing(async () =>
            saved(await save(`${name}.png`, await figurePng(figure, colours, face()), "image/png")),
          )
        }
      >
        PNG
      </button>
      <button
        type="button"
        onClick={() =>
          doing(async () => {
            const svg = figureSvg(figure, colours, face(), measureWith(face()));
            return saved(await save(`${name}.svg`, new TextEncoder().encode(svg), "image/svg+xml"));
          })
        }
      >
        SVG
      </button>
      <button
        type="button"
        onClick={() =>
          doing(async () => {
            await copyText(table());
            return "copied";
          })
        }
        title="Copy the numbers as comma-separated text"
      >
        Copy CSV
      </button>
    </div>
  );
}
