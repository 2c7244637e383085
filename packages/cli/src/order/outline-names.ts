import type { CutterItem } from './order.js';

/**
 * A name for the blank of each outline of an item: the item's own where there
 * is one, or else with what tells the outlines apart, such as `Ring, outer`.
 */
export function outlineNames({ name, outlines }: Pick<CutterItem, 'name' | 'outlines'>): string[] {
  if (outlines.length === 1) return [name];
  const words = outlines.map((outline) => outline.name.split(' '));
  const shared = sharedStart(words);
  const short = words.map((own) => own.slice(shared).join(' '));
  // A bare number would not say of what.
  const apart = short.every((own) => /\p{L}/u.test(own));
  return outlines.map((outline, index) => `${name}, ${apart ? short[index] : outline.name}`);
}

/** How many words all begin with. */
function sharedStart(all: readonly (readonly string[])[]): number {
  const [first = []] = all;
  const differs = first.findIndex((word, index) => all.some((words) => words[index] !== word));
  return differs < 0 ? first.length : differs;
}
