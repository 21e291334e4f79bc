/** How the door is computed, what it does not know, what to be careful with, and the keys. */
import type { ReactNode } from "react";
import { Heading } from "react-aria-components";
import { CAUTIONS, CODES } from "../../parts/cautions.ts";
import { KEY_HELP } from "../keys.ts";

const WORDS: readonly (readonly [string, string])[] = [
  ["let go", "the moment the animal’s back leaves the flap, which then swings freely"],
  ["settle", "from then on the flap stays within the bolt’s play: the bolt would find its slot"],
  ["hold", "how long the timer keeps the bolt withdrawn after the last pulse it counted"],
  ["caught", "the bolt rises into its slot: latched"],
  ["riding", "the bolt’s tip bears on the flap’s edge beside the slot and brakes it"],
  ["stuck", "the flap stopped while the bolt rides: unlatched"],
  ["shut out", "the bolt came up beside the flap: ajar and jammed"],
  ["dead band", "how far off centre friction can hold the flap at rest"],
];

const ASSUMPTIONS: readonly string[] = [
  "The bolt’s friction begins where it leaves its slot; pressed back out, it rides on at the flap’s speed (on the safe side).",
  "A pressure difference vents evenly as the flap opens to 10°.",
  "The flap is let go at rest, at the angle at which it rides on the animal’s back.",
  "A comfortable push is 10 % of the body weight where you do not say otherwise.",
  "Air: strip theory with the drag of a flat plate; a swinging flap’s drag is several times that, so the hold errs on the long side. The study spreads it.",
  "Coil times are electrical only: plunger motion adds milliseconds, against seconds of swing.",
];

const LIMITS: readonly string[] = [
  "The flap is rigid and its hinge has no play.",
  "The bolt’s spring pushes evenly over its stroke.",
  "The air that moves with the flap is not counted (2 to 3 % of its inertia).",
  "Catching a fast flap in passing is an impact, not a latching: both are called caught, the energy is shown.",
  "Eddy currents only through the damper.",
  "Magnets do not couple with steel nearby.",
];

export function Help(): ReactNode {
  return (
    <div className="help">
      <Heading slot="title">How the door is computed</Heading>
      <p>
        The flap is a plate on a hinge. Gravity and the magnets pull it to the centre; hinge, seal, damper and
        air take its energy. Its equation of motion is solved from let-go to rest, and the hold is set against
        the moment it settles. Every figure opens its own formula, values and source.
      </p>
      <h3>Words</h3>
      <dl className="words">
        {WORDS.map(([word, meaning]) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
      <h3>Assumed</h3>
      <List items={ASSUMPTIONS} />
      <h3>Not known to it</h3>
      <List items={LIMITS} />
      <h3>Be careful</h3>
      <List items={[...Object.values(CAUTIONS).flat(), CODES]} />
      <h3>Keys</h3>
      <dl className="words">
        {KEY_HELP.map(({ keys, does }) => (
          <div key={keys}>
            <dt>
              <kbd>{keys}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

function List({ items }: { items: readonly string[] }): ReactNode {
  return (
    <ul>
      {items.map((item) => (
        <li key={item}>{item}</li>
      ))}
    </ul>
  );
}
