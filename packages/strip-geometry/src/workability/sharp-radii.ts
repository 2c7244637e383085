import type { CurveRun } from '../develop.js';
import type { Strip } from '../strip.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import type { CheckedLimits } from './limits.js';
import type { WorkabilityWarning } from './warning.js';

/** The bends and curves that are tighter on their inner face than the metal stands. */
export function sharpRadii(strip: Strip, { leastRadius }: CheckedLimits): WorkabilityWarning[] {
  const { bendRule, bends, runs } = strip;
  const limit = leastRadius * bendRule.thickness;
  const warn = (
    what: string,
    measured: number,
    place: WorkabilityWarning['place'],
  ): WorkabilityWarning[] => {
    if (measured >= limit - LENGTH_TOLERANCE) {
      return [];
    }
    const message =
      `${what} has an inside radius of ${printLength(measured)}; this metal may crack below ` +
      `${printLength(limit)}. Bend it over a rounder edge, or take softer or thinner metal.`;
    const source = 'common practice';
    return [{ code: 'sharp radius', place, measured, limit, unit: 'mm', source, message }];
  };
  const curves = runs.filter((run) => run.kind === 'curve');
  return [
    ...bends.flatMap(({ number, from, to }) =>
      warn(`Bend ${number}`, bendRule.insideRadius, { on: 'bend', bend: number, from, to }),
    ),
    ...curves.flatMap((run, index) => {
      const { from, to } = run;
      const curve = index + 1;
      return warn(`Curve ${curve}`, innerRadius(strip, run), { on: 'curve', curve, from, to });
    }),
  ];
}

/** Radius of a curve's inner face where it is tightest. */
export function innerRadius(
  { sizeIs, bendRule }: Pick<Strip, 'sizeIs' | 'bendRule'>,
  { radius, direction }: Pick<CurveRun, 'radius' | 'direction'>,
): number {
  if (sizeIs === 'middle') {
    return radius - bendRule.thickness / 2;
  }
  // The inner face of a bend toward the inside is the inside face, and the other way round.
  return (direction === 'in') === (sizeIs === 'inside') ? radius : radius - bendRule.thickness;
}
