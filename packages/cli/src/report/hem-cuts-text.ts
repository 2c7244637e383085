import { printBareLength, printLength, type Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import { counted } from './counted.js';

/** `V of 45 degrees a side at each bend, its point on the fold line`, or a slit to it; undefined where none is cut. */
export function notchText({ notches = [], edge }: PlanFileStrip): string | undefined {
  const [first] = notches;
  if (first === undefined) return undefined;
  const line = (edge?.foldLines.length ?? 0) > 1 ? 'the last fold line' : 'the fold line';
  if (first.halfAngle === 0) return `a slit at each bend, from the raw edge to ${line}`;
  return `V of ${printAngle(first.halfAngle)} degrees a side at each bend, its point on ${line}`;
}

/** `curve 1: 12 slits from 1/4 to 3 5/8 in`; undefined where none is cut. */
export function snipText({ snips = [] }: PlanFileStrip, rule: Rule): string | undefined {
  if (snips.length === 0) return undefined;
  const curves = [...new Set(snips.map(({ curve }) => curve))];
  return curves
    .map((curve) => {
      const own = snips.filter((snip) => snip.curve === curve);
      const [first, last] = [own[0], own.at(-1)];
      if (first === undefined || last === undefined) return '';
      const what =
        first.halfAngle === 0
          ? counted(own.length, 'slit')
          : `${counted(own.length, 'V-cut')} of ${printAngle(first.halfAngle)} degrees a side`;
      const place =
        own.length === 1
          ? `at ${printLength(first.at, rule)}`
          : `evenly from ${printBareLength(first.at, rule)} to ${printLength(last.at, rule)}`;
      return `curve ${curve}: ${what} ${place}`;
    })
    .join('; ');
}

function printAngle(degrees: number): string {
  return `${Number(degrees.toFixed(1))}`;
}
