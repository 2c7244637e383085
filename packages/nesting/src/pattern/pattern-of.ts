import { cutUp } from './cut-up.js';
import type { CutBox, CuttingRules } from './cutting-rules.js';
import { keptValue } from './kept-value.js';
import type { Part, Pattern } from './part.js';

/**
 * A pattern with its pieces counted and its remnants valued as its cuts leave them.
 * @throws Error where a part is larger than its rectangle
 */
export function patternOf(
  part: Part,
  stockClass: number,
  box: CutBox,
  rules: CuttingRules,
): Pattern {
  const { kerf } = rules.limits;
  const copies = new Map<number, number>();
  let kept = 0;
  const fits = cutUp(part, box, rules, {
    piece: ({ piece }) => copies.set(piece, (copies.get(piece) ?? 0) + 1),
    remnant: ({ length, width }) => {
      kept += keptValue(length - kerf, width - kerf, box.keep);
    },
  });
  if (!fits) throw new Error(`a pattern is larger than its box, ${box.length} x ${box.width}`);
  const counts = [...copies].sort((a, b) => a[0] - b[0]);
  return { stockClass, part, counts, kept };
}
