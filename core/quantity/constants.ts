/** Constants of nature that more than one room needs. */

/** Standard acceleration of free fall, m/s², exact by definition (3rd CGPM 1901; ISO 80000-3). */
export const STANDARD_GRAVITY = 9.80665;
