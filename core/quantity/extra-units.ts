/**
 * Units the trade uses that mathjs lacks or holds with too few digits, each by its exact definition.
 * Sources: NIST SP 811 (2008), appendix B: pound-force, psi, conventional millimetre of water and of mercury, gauss,
 * nautical mile per hour, mile per hour; g_n = 9.80665 m/s² (3rd CGPM, 1901).
 */
export interface ExtraUnit {
  readonly name: string;
  /** SI value as one number's text, or as a quotient of two. */
  readonly value: readonly [over: string, under?: string];
  readonly unit: string;
  readonly prefixes?: "short" | "long";
  readonly aliases?: readonly string[];
}

/** π to 50 digits (DLMF 3.12.1), so that 180 deg is the double nearest to π. */
const PI = "3.14159265358979323846264338327950288419716939937511";

export const EXTRA_UNITS: readonly ExtraUnit[] = [
  { name: "deg", value: [PI, "180"], unit: "rad", aliases: ["degree", "degrees"] },
  { name: "arcmin", value: [PI, "10800"], unit: "rad", aliases: ["arcminute", "arcminutes"] },
  { name: "arcsec", value: [PI, "648000"], unit: "rad", aliases: ["arcsecond", "arcseconds"] },
  { name: "grad", value: [PI, "200"], unit: "rad", aliases: ["gradian", "gradians", "gon"] },
  { name: "rev", value: [PI, "0.5"], unit: "rad", aliases: ["turn", "turns", "cycle", "cycles"] },
  { name: "rpm", value: [PI, "30"], unit: "rad/s" },
  { name: "mph", value: ["0.44704"], unit: "m/s" },
  { name: "kph", value: ["1", "3.6"], unit: "m/s" },
  { name: "knot", value: ["1852", "3600"], unit: "m/s", aliases: ["knots", "kn"] },
  { name: "metre", value: ["1"], unit: "m", prefixes: "long", aliases: ["metres"] },
  { name: "thou", value: ["0.0000254"], unit: "m" },
  { name: "newtons", value: ["1"], unit: "N" },
  { name: "gf", value: ["0.00980665"], unit: "N", prefixes: "short", aliases: ["gramforce"] },
  { name: "kgf", value: ["9.80665"], unit: "N", aliases: ["kilogramforce", "kp"] },
  { name: "ozf", value: ["4.4482216152605", "16"], unit: "N", aliases: ["ounceforce"] },
  { name: "kip", value: ["4448.2216152605"], unit: "N", aliases: ["kips"] },
  { name: "Nm", value: ["1"], unit: "N m", prefixes: "short" },
  { name: "Nms", value: ["1"], unit: "N m s", prefixes: "short" },
  { name: "pascal", value: ["1"], unit: "Pa", prefixes: "long", aliases: ["pascals"] },
  { name: "psi", value: ["4.4482216152605", "0.00064516"], unit: "Pa" },
  { name: "torr", value: ["101325", "760"], unit: "Pa", aliases: ["Torr"] },
  { name: "mmHg", value: ["133.322387415"], unit: "Pa", aliases: ["mmhg"] },
  { name: "inHg", value: ["3386.388640341"], unit: "Pa", aliases: ["inhg"] },
  { name: "inH2O", value: ["249.08891"], unit: "Pa", aliases: ["inh2o"] },
  { name: "G", value: ["0.0001"], unit: "T", prefixes: "short" },
  { name: "gauss", value: ["0.0001"], unit: "T", prefixes: "long" },
];
