import type { OutlineFamily } from '@stripwright/strip-geometry';
import { foldSpelling, nearestSpelling } from '../faults/nearest-spelling.js';

/** The family of a name; upper and lower case, blanks and hyphens count alike. */
export function familySpelt(
  name: string,
  families: readonly OutlineFamily[],
): OutlineFamily | undefined {
  return families.find((family) => foldSpelling(family.name) === foldSpelling(name));
}

/**
 * The family that a name probably means, spelt right or not: an item with a misspelt outline
 * is read as one of it, to find what else is wrong.
 */
export function familyMeant(
  name: string,
  families: readonly OutlineFamily[],
): OutlineFamily | undefined {
  const nearest = nearestSpelling(
    name,
    families.map((family) => family.name),
  );
  return familySpelt(name, families) ?? families.find((family) => family.name === nearest);
}
