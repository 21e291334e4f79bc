/** A figure and its unit stay on one line. */
const UNITS = /(\d) (?=(?:mm|cm|m|in|ft|N|lbf|ozf|oz|g|s|V|K|°C|°F|%)(?![\w]))/g;

export const unbroken = (sentence: string): string => sentence.replace(UNITS, "$1\u00a0");
