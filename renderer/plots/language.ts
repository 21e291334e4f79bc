/**
 * The plot library makes a number format of `navigator.language` as it loads. A browser started under the POSIX locale
 * reports "en-US@posix", which no format takes, and the library would not load at all: there the tag is replaced by its
 * valid part. To be imported before the library.
 */
function isValid(tag: string): boolean {
  try {
    Intl.getCanonicalLocales(tag);
    return true;
  } catch {
    return false;
  }
}

if (!isValid(navigator.language)) {
  const part = navigator.language.split("@")[0];
  Object.defineProperty(navigator, "language", { value: isValid(part) ? part : "en", configurable: true });
}

/** The language the library sees. */
export const language = navigator.language;
