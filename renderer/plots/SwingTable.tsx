/** What one can count and measure on the swing: passes, periods, decrements swing by swing. */
import type { DoorView } from "../state/view.ts";
import type { SwingReading } from "./swing-figures.ts";

const DEGREES = 180 / Math.PI;

export function SwingTable({ view, reading }: { view: DoorView; reading: SwingReading }) {
  // Whole swings one after another: every second of the overlapping ones.
  const whole = reading.swings.filter((_, i) => i % 2 === 0);
  const passes = view.results["swing.centrePasses"]?.value ?? null;
  const small = view.results["flap.smallAnglePeriod"]?.value ?? null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reached by keyboard.
    <section className="plot-beside" aria-label="Swing by swing" tabIndex={0}>
      <dl>
        {passes !== null && (
          <div>
            <dt>passes of the slot to count</dt>
            <dd>{passes}</dd>
          </div>
        )}
        {small !== null && (
          <div>
            <dt>small-angle period, gravity alone</dt>
            <dd>{small.toFixed(3)} s</dd>
          </div>
        )}
      </dl>
      {whole.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">swing</th>
              <th scope="col">amplitude</th>
              <th scope="col">period</th>
              <th
                scope="col"
                title="Logarithmic decrement: ln of one amplitude over the next on the same side"
              >
                decrement
              </th>
            </tr>
          </thead>
          <tbody>
            {whole.map(({ time, amplitude, period, decrement }, i) => (
              <tr key={time}>
                <th scope="row">{i + 1}</th>
                <td>{(amplitude * DEGREES).toFixed(1)}°</td>
                <td>{period.toFixed(3)} s</td>
                <td>{decrement.toFixed(3)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
