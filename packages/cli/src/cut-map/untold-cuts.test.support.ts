/** The numbers of the cuts that a foot tells of: `cut 7 at ...`, `cuts 8 to 12 at ...`. */
export function numbersTold(foot: string): readonly number[] {
  const short = /the cutting list tells of: ([^.]*)\./u.exec(foot)?.[1];
  const spans =
    short === undefined
      ? foot.matchAll(/\bcuts? (\d+)(?: to (\d+))? at /gu)
      : short.matchAll(/(\d+)(?: to (\d+))?/gu);
  return [...spans].flatMap(([, from, to = from]) =>
    Array.from({ length: Number(to) - Number(from) + 1 }, (_, index) => Number(from) + index),
  );
}

/** How many pieces a foot tells of: those of each line, in each of its strips. */
export function piecesTold(foot: string): number {
  const words = /(\d+) strips from|(?:up|right)(?:, each [^:]+ on)?: |(?:(\d+) of )?No\. \d+/gu;
  let [strips, next, pieces] = [1, 1, 0];
  for (const [word, many, count] of foot.matchAll(words)) {
    if (many !== undefined) next = Number(many);
    else if (word.endsWith(': ')) [strips, next] = [next, 1];
    else pieces += strips * Number(count ?? 1);
  }
  return pieces;
}
