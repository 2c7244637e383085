import { markOut } from '../marks/mark-out.js';
import type { Strip } from '../strip.js';
import { printLength } from '../wording.js';
import type { CheckedLimits } from './limits.js';
import type { WorkabilityWarning } from './warning.js';

/** The marks that the rule cannot tell apart. */
export function crowdedMarks(strip: Strip, { smallestMark }: CheckedLimits): WorkabilityWarning[] {
  if (smallestMark === undefined) {
    return [];
  }
  const { marks, crowded } = markOut(strip, smallestMark);
  return crowded.map(({ index, apart }): WorkabilityWarning => {
    const [from = 0, to = 0] = [marks[index]?.exact, marks[index + 1]?.exact];
    return {
      code: 'crowded marks',
      place: { on: 'flat', from, to },
      measured: apart,
      limit: smallestMark,
      unit: 'mm',
      source: 'the rule itself',
      message:
        `The marks at ${printLength(from)} and ${printLength(to)} are ${printLength(apart)} apart, ` +
        `less than the smallest mark, ${printLength(smallestMark)}. Use a finer rule there.`,
    };
  });
}
