/** The nearest of several known names to a mistyped one. */

/** The name with the least edit distance, capitals aside; undefined where none is near enough to be meant. */
export function nearestName(typed: string, names: readonly string[]): string | undefined {
  const wanted = typed.toLowerCase().slice(0, 100);
  let best: string | undefined;
  let least = Math.max(2, Math.floor(wanted.length * 0.4)) + 1;
  for (const name of names) {
    const distance = editDistance(wanted, name.toLowerCase());
    if (distance < least) {
      least = distance;
      best = name;
    }
  }
  return best;
}

/** Levenshtein, Soviet Physics Doklady 10 (1966) 707: insertions, deletions and replacements from one to the other. */
export function editDistance(from: string, to: string): number {
  let above = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = above[j - 1] + (from[i - 1] === to[j - 1] ? 0 : 1);
      row.push(Math.min(replaced, above[j] + 1, row[j - 1] + 1));
    }
    above = row;
  }
  return above[to.length];
}
