/**
 * What a result hangs on: a bar per input, longest first. Full where the input acts by itself, striped where it acts only together
 * with others, the sampling error as a whisker; and the same in figures.
 */
import { useId, useState } from "react";
import "./plots.css";

/** A share of what varies, with its standard error where there is one. */
export interface DriverShare {
  readonly value: number;
  readonly error: number | null;
}

export interface Driver extends DriverShare {
  readonly key: string;
  /** How it is measured: "total Sobol' index of …". */
  readonly measure: string;
  /** The part of the value that the input has by itself; without it the value is that already. */
  readonly alone?: (DriverShare & { readonly measure: string }) | null;
}

export interface DriversProps {
  readonly drivers: readonly Driver[];
  /** What the drivers are of: "settling time". */
  readonly of?: string;
  /** An input in words; its key where none is given. */
  readonly label?: (key: string) => string;
  /** Leads to the input, where `leads`. */
  readonly onChoose?: (key: string) => void;
  readonly leads?: (key: string) => boolean;
}

/** Inputs shown at first. */
const FIRST = 8;
/** The longest bar is at least this share long. */
const LEAST_SCALE = 0.1;

export function Drivers({
  drivers,
  of = "result",
  label = (key) => key,
  onChoose,
  leads = () => true,
}: DriversProps) {
  const [all, setAll] = useState(false);
  const ranked = [...drivers].sort((a, b) => b.value - a.value);
  const split = ranked.some(({ alone }) => alone !== undefined && alone !== null);
  const ends = ranked.map(({ value, error }) => value + (error ?? 0));
  const longest = Math.max(LEAST_SCALE, ...ends);
  const rest = ranked.slice(FIRST);
  return (
    <div className="drivers-place">
      <table className="drivers">
        <caption>
          {split
            ? `In all: how much of the ${of}’s spread would stay if every other input were known. By itself: how much would go if this one were.`
            : `How much of the ${of}’s spread would go if this input were known.`}
        </caption>
        <Head split={split} />
        <tbody>
          {(all ? ranked : ranked.slice(0, FIRST)).map((driver) => (
            <tr key={driver.key}>
              <th className="drivers-name" scope="row">
                {onChoose === undefined || !leads(driver.key) ? (
                  label(driver.key)
                ) : (
                  <button type="button" onClick={() => onChoose(driver.key)}>
                    {label(driver.key)}
                  </button>
                )}
              </th>
              <td className="drivers-track" aria-hidden="true">
                <Bar driver={driver} longest={longest} />
              </td>
              <Value share={driver} strong />
              {split && <Value share={driver.alone ?? driver} />}
            </tr>
          ))}
        </tbody>
      </table>
      {rest.length > 0 && (
        <button type="button" className="drivers-more" aria-expanded={all} onClick={() => setAll(!all)}>
          {all
            ? "Only the strongest"
            : `${rest.length} more, ${percentOf(Math.max(0, rest[0].value))} % and less`}
        </button>
      )}
      <p className="drivers-measure">{measureWords(ranked[0])}</p>
    </div>
  );
}

export default Drivers;

function Head({ split }: { split: boolean }) {
  return (
    <thead>
      <tr className="drivers-head">
        <th scope="col">input</th>
        <td aria-hidden="true" className="drivers-legend">
          {split && (
            <>
              <span>
                <Swatch /> by itself
              </span>
              <span>
                <Swatch striped /> only together with others
              </span>
            </>
          )}
        </td>
        <th scope="col">{split ? "in all" : "by itself"}</th>
        {split && <th scope="col">by itself</th>}
      </tr>
    </thead>
  );
}

function Swatch({ striped = false }: { striped?: boolean }) {
  const stripes = useId();
  return (
    <svg width="22" height="12" aria-hidden="true">
      {striped && <Stripes id={stripes} />}
      <rect
        className={striped ? "drivers-together" : "drivers-alone"}
        {...(striped ? { fill: `url(#${stripes})` } : {})}
        x="0.5"
        y="0.5"
        width="21"
        height="11"
      />
    </svg>
  );
}

function Stripes({ id }: { id: string }) {
  return (
    <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <rect className="drivers-stripe" width="2" height="5" />
    </pattern>
  );
}

/** Lengths are shares of the longest; `y` in px of a row 24 px high. */
function Bar({ driver: { value, error, alone }, longest }: { driver: Driver; longest: number }) {
  const stripes = useId();
  const at = (share: number): string => `${(100 * Math.min(1, Math.max(0, share / longest))).toFixed(2)}%`;
  const whole = Math.max(0, value);
  const own = Math.min(whole, Math.max(0, alone?.value ?? whole));
  const whisker = error === null ? null : ([at(value - error), at(value + error)] as const);
  return (
    <svg width="100%" height="24" aria-hidden="true">
      <Stripes id={stripes} />
      {whole > own && (
        <rect
          className="drivers-together"
          fill={`url(#${stripes})`}
          x={at(own)}
          y="3.5"
          width={at(whole - own)}
          height="17"
        />
      )}
      <rect className="drivers-alone" x="0" y="3.5" width={at(own)} height="17" />
      {whisker !== null &&
        ["drivers-halo", "drivers-whisker"].map((kind) => (
          <g key={kind} className={kind}>
            <line x1={whisker[0]} x2={whisker[1]} y1="12" y2="12" />
            <line x1={whisker[0]} x2={whisker[0]} y1="8" y2="16" />
            <line x1={whisker[1]} x2={whisker[1]} y1="8" y2="16" />
          </g>
        ))}
    </svg>
  );
}

function Value({ share: { value, error }, strong = false }: { share: DriverShare; strong?: boolean }) {
  const share = Math.max(0, value);
  return (
    <td className="drivers-value" data-strong={strong || undefined}>
      {percentOf(share)} <span>{error === null ? "%" : `± ${percentOf(error, share, Math.ceil)} %`}</span>
    </td>
  );
}

/** From here on a share is told in whole per cents, below in tenths. */
const WHOLE = 0.0995;

/** Per cent, as exact as `like` is told. */
function percentOf(share: number, like = share, round: (x: number) => number = Math.round): string {
  const digits = like >= WHOLE ? 0 : 1;
  return (round(100 * share * 10 ** digits - 1e-9) / 10 ** digits).toFixed(digits);
}

/** "total Sobol' index of the rank of the settle time, 2048 scrambled Sobol' points …; ± one standard error". */
function measureWords(driver: Driver | undefined): string {
  if (driver === undefined) return "";
  const { measure, alone } = driver;
  const own = alone?.measure.split(" of ")[0];
  const both = own === undefined ? measure : `${measure}; by itself: ${own}`;
  return `Measure: ${both}. ± is one standard error.`;
}
