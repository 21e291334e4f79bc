/** Cautions that hold for every door, at the part they are about. */
import type { StationId } from "./stations.ts";

export const CAUTIONS: Readonly<Partial<Record<StationId, readonly string[]>>> = {
  animals: ["A flap must stay pushable by hand from inside and never trap a child or an animal."],
  hinge: ["Mind fingers at the hinge side: the gap closes as the flap swings."],
  magnets: ["Bond or cap every magnet. Two swallowed by a child or a pet draw together and injure the gut."],
  latch: ["Small parts: keep bolt, spring and link out of the reach of children and pets."],
  solenoid: ["A coil that is kept on gets hot. Guard it where a hand or a nose can reach."],
  supply: [
    "Use a listed, limited-energy low-voltage adapter; never bring mains inside the door.",
    "Route the cord where neither flap nor door can pinch it.",
    "With the power lost the bolt stays out and the door is locked: a person must be able to open it from inside.",
  ],
};

/** Said in the help, for all of them. */
export const CODES =
  "Local electrical and building codes and licensed practice come first; nothing here replaces them.";
