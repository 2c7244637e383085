/** Sums of lengths may be off by so many millimetres. */
const SLACK = 0.01;

/**
 * Neighbours that go on like one another, put together: each is `isNext` to the one
 * before, and starts as far from it as that one from its own.
 */
export function equalSteps<Strip extends { readonly from: number }>(
  strips: readonly Strip[],
  isNext: (one: Strip, other: Strip) => boolean,
): readonly (readonly Strip[])[] {
  const groups: Strip[][] = [];
  for (const strip of strips) {
    const group = groups.at(-1);
    const [before, last] = [group?.at(-2), group?.at(-1)];
    const isEqual =
      last !== undefined &&
      isNext(last, strip) &&
      (before === undefined ||
        Math.abs(strip.from - last.from - (last.from - before.from)) < SLACK);
    if (isEqual) group?.push(strip);
    else groups.push([strip]);
  }
  return groups;
}

/** `5 in up`, or `9 strips from 5 in up, each 1 in on` of several at equal steps. */
export function stepWords(
  places: readonly number[],
  way: string,
  print: (millimetres: number) => string,
): string {
  const [first = 0, second = first] = places;
  if (places.length < 2) return `${print(first)} ${way}`;
  return `${places.length} strips from ${print(first)} ${way}, each ${print(second - first)} on`;
}
