import type { FoldFigures } from '../refold/refold.js';
import { printLength } from '../wording.js';
import type { WorkabilityWarning } from './warning.js';

/**
 * What folding back found, where it is as much as a smallest mark or more:
 * then no angles were found that bring the outline nearer, since both sides of
 * a sharp tip are marked each by itself, and the tip leans by far more than they differ.
 */
export function coarseMarks(
  { largestDeviation, closureGap, at }: Omit<FoldFigures, 'path'>,
  smallestMark: number,
): WorkabilityWarning[] {
  const marks = `marks of ${printLength(smallestMark)}`;
  const warning = (measured: number, found: string): WorkabilityWarning => ({
    code: 'coarse marks',
    place: { on: 'flat', from: at, to: at },
    measured,
    limit: smallestMark,
    unit: 'mm',
    source: 'the refold check',
    message: `${found}, which is no nearer than the marks. Use a finer rule, or blunter corners.`,
  });
  return [
    ...(largestDeviation >= smallestMark
      ? [
          warning(
            largestDeviation,
            `Folded at ${marks}, the outline strays ${printLength(largestDeviation)} from the ` +
              `drawing at ${printLength(at)} from the square end`,
          ),
        ]
      : []),
    ...(closureGap >= smallestMark
      ? [
          warning(
            closureGap,
            `Folded at ${marks}, the ends miss each other by ${printLength(closureGap)}`,
          ),
        ]
      : []),
  ];
}
