/** What the result hangs on most: a bar per input, longest first, with its sampling error as a whisker. */
import "./plots.css";

export interface Driver {
  readonly key: string;
  /** How it is measured: "rank correlation squared". */
  readonly measure: string;
  readonly value: number;
  /** Standard error of the value. */
  readonly error: number;
}

export interface DriversProps {
  readonly drivers: readonly Driver[];
  /** An input in words; its key where none is given. */
  readonly label?: (key: string) => string;
  /** Leads to the input. */
  readonly onChoose?: (key: string) => void;
}

export function Drivers({ drivers, label = (key) => key, onChoose }: DriversProps) {
  const ranked = [...drivers].sort((a, b) => b.value - a.value);
  const longest = Math.max(1e-12, ...ranked.map(({ value, error }) => value + error));
  const share = (value: number): string => `${(100 * Math.min(1, Math.max(0, value / longest))).toFixed(2)}%`;
  const measures = [...new Set(ranked.map(({ measure }) => measure))];
  return (
    <table className="drivers">
      <caption>{measures.join(", ")}, ± its sampling error</caption>
      <tbody>
        {ranked.map(({ key, value, error }) => (
          <tr key={key}>
            <th className="drivers-name" scope="row">
              {onChoose === undefined ? (
                label(key)
              ) : (
                <button type="button" onClick={() => onChoose(key)}>
                  {label(key)}
                </button>
              )}
            </th>
            <td className="drivers-track" aria-hidden="true">
              <div
                className="drivers-bar"
                style={{ width: share(value) }}
                data-small={value <= error || undefined}
              />
              <div
                className="drivers-whisker"
                style={{
                  left: share(value - error),
                  width: `calc(${share(value + error)} - ${share(value - error)})`,
                }}
              />
            </td>
            <td className="drivers-value">
              {value.toFixed(2)} <span>± {error.toFixed(2)}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export default Drivers;
