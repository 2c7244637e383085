import type { RackMetal } from './rack.js';

/** Things of one metal and thickness. */
export interface OfOneMetal<T extends RackMetal> extends RackMetal {
  readonly stock: readonly T[];
}

/** Parts things by metal and thickness, by name and from thin to thick; what is not measured comes last. */
export function byMetal<T extends RackMetal>(stock: readonly T[]): readonly OfOneMetal<T>[] {
  const groups = new Map<string, T[]>();
  for (const one of stock) {
    const key = `${one.thickness ?? ''} ${one.metal}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return [...groups.values()]
    .flatMap((group) => {
      const [first] = group;
      if (first === undefined) return [];
      const { metal, thickness } = first;
      return [{ metal, ...(thickness === undefined ? {} : { thickness }), stock: group }];
    })
    .sort(
      (one, other) =>
        one.metal.localeCompare(other.metal, 'en') ||
        (one.thickness ?? Number.POSITIVE_INFINITY) - (other.thickness ?? Number.POSITIVE_INFINITY),
    );
}
