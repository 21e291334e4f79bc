/** What a reading outside its limits says of the door: a clue and where to look, never a verdict. */
import type { TrialField } from "../state/trial-readings.ts";
import type { Expected } from "../worker/fit-messages.ts";
import type { Side } from "./expectations.ts";

const MEANINGS: Readonly<Record<TrialField, Readonly<Record<Side, string>>>> = {
  letGo: { below: "", above: "" },
  passes: {
    below: "It loses more than the file says: a stiffer hinge or seal, or something rubs.",
    above: "It loses less than the file says: it swings longer, and the hold may be too short.",
  },
  settle: {
    below: "It settles sooner than computed: the hold is on the safe side.",
    above:
      "It settles later than computed: the bolt may come up beside the flap. Let the swing be fitted and the hold set anew.",
  },
  still: {
    below: "There is more friction than in the file.",
    above: "There is less friction than in the file.",
  },
  rest: {
    below: "",
    above:
      "Friction holds it farther off than the magnets pull it back: free the hinge or the seal, or bring the magnets nearer.",
  },
  push: {
    below: "It opens more easily than computed: magnets farther apart or weaker, or less friction.",
    above: "It is harder to push than computed: magnets nearer or stronger, or more friction.",
  },
  lowEnd: {
    below:
      "On a weak adapter the bolt stays in and the door locked: a bolt that binds, a stiffer spring or a longer stroke.",
    above: "It pulls more than the file says: more in reserve.",
  },
  pullIn: {
    below: "It takes less than computed: more in reserve.",
    above: "It takes more than computed: a bolt that binds, a stiffer spring or a longer stroke.",
  },
  room: { below: "", above: "" },
  coil: {
    below: "",
    above:
      "Hotter than its insulation stands for long: switch it off. It needs a lower voltage, or a coil made to stay on.",
  },
  hold: {
    below:
      "The bolt comes out sooner than the timer’s parts allow for: put it into the door, and the verdict is that of this hold.",
    above:
      "The bolt comes out later than the timer’s parts allow for: put it into the door, and the verdict is that of this hold.",
  },
};

export function meaning(field: TrialField, side: Side, value: number, expected: Expected): string {
  const { capture, push, pull } = expected;
  const words = MEANINGS[field][side];
  if (field === "rest" && capture !== null && Math.abs(value) > capture) {
    return `There the bolt does not find its slot: the door stays unlocked. ${words}`;
  }
  if (field === "push" && push !== null && value > push.limit) {
    return `That is more than ${push.animal} is at ease with. ${words}`;
  }
  if (field === "pullIn" && pull !== null && value > pull.low) {
    return `The supply’s low end does not give that. ${words}`;
  }
  return words;
}
