/**
 * The word that was probably meant: the known word that takes the fewest
 * changed, added, dropped or swapped letters, if that is at most a third of
 * its length, or else the only one that begins with it. Upper and lower case, blanks, hyphens and underscores count alike.
 */
export function nearestSpelling(word: string, known: readonly string[]): string | undefined {
  const plain = foldSpelling(word);
  let best: { readonly word: string; readonly distance: number } | undefined;
  for (const candidate of known) {
    const distance = editDistance(plain, foldSpelling(candidate));
    if (distance > Math.max(1, Math.floor(candidate.length / 3))) continue;
    if (best === undefined || distance < best.distance) best = { word: candidate, distance };
  }
  return best?.word ?? onlyOneThatBegins(plain, known);
}

/** Fewer letters say too little. */
const SHORTEST_BEGINNING = 3;

function onlyOneThatBegins(plain: string, known: readonly string[]): string | undefined {
  if (plain.length < SHORTEST_BEGINNING) return undefined;
  const [first, ...others] = known.filter((word) => foldSpelling(word).startsWith(plain));
  return others.length === 0 ? first : undefined;
}

/** `Regular-Polygon` and `regular  polygon` are spelt alike. */
export function foldSpelling(word: string): string {
  return word
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');
}

/** Letters to change, add, drop, or swap with their neighbour to turn one word into the other. */
export function editDistance(from: string, to: string): number {
  // Rows of the usual table; a swap looks back two rows.
  let before: number[] = [];
  let above = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const same = from[row - 1] === to[column - 1];
      let least = Math.min(
        (above[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (above[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped = from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (row > 1 && column > 1 && swapped) least = Math.min(least, (before[column - 2] ?? 0) + 1);
      current.push(least);
    }
    before = above;
    above = current;
  }
  return above[to.length] ?? 0;
}
