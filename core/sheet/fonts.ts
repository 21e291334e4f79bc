/**
 * The faces that pages carry with them: Figtree for all words, and Manrope for the Greek letters Figtree does not have (Ω, θ).
 * Both under the SIL Open Font License 1.1.
 */

import regular from "@expo-google-fonts/figtree/400Regular/Figtree_400Regular.ttf?inline";
import strong from "@expo-google-fonts/figtree/600SemiBold/Figtree_600SemiBold.ttf?inline";
import greekRegular from "@fontsource/manrope/files/manrope-greek-400-normal.woff?inline";
import greekStrong from "@fontsource/manrope/files/manrope-greek-600-normal.woff?inline";

/** A font file as a `data:` address. */
export interface Face {
  readonly family: "Figtree" | "Manrope";
  readonly weight: 400 | 600;
  readonly format: "truetype" | "woff";
  readonly data: string;
}

export const FACES_CARRIED: readonly Face[] = [
  { family: "Figtree", weight: 400, format: "truetype", data: regular },
  { family: "Figtree", weight: 600, format: "truetype", data: strong },
  { family: "Manrope", weight: 400, format: "woff", data: greekRegular },
  { family: "Manrope", weight: 600, format: "woff", data: greekStrong },
];

/** The file's bytes. */
export function faceBytes(family: Face["family"], weight: Face["weight"]): Uint8Array {
  const face = FACES_CARRIED.find((one) => one.family === family && one.weight === weight);
  const base64 = face?.data.slice(face.data.indexOf(",") + 1) ?? "";
  return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
}
