/** The wiring symbols usual where a person's units are. */
import type { UnitSystem } from "../quantity/format.ts";
import type { SymbolSet } from "./wiring-symbols.ts";

export const symbolsFor = (system: UnitSystem): SymbolSet => (system === "inch" ? "ieee" : "iec");
