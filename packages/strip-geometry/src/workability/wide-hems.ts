import { hemReach } from '../notches/hem-reach.js';
import { hemAtBend } from '../notches/hem-side.js';
import type { Strip } from '../strip.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import { flatsOf } from './flats.js';
import type { CheckedLimits } from './limits.js';
import { innerRadius } from './sharp-radii.js';
import type { WorkabilityWarning } from './warning.js';

/** The flats that are shorter than the hem is wide. */
export function hemsWiderThanFlats(strip: Strip): WorkabilityWarning[] {
  const hem = strip.edge.foldedWidth;
  return flatsOf(strip)
    .filter(({ length }) => length < hem - LENGTH_TOLERANCE)
    .map(({ from, to, length }) => ({
      code: 'hem wider than flat',
      place: { on: 'flat', from, to },
      measured: length,
      limit: hem,
      unit: 'mm',
      source: 'common practice',
      message:
        `The hem is ${printLength(hem)} wide, but the flat from ${printLength(from)} to ` +
        `${printLength(to)} only ${printLength(length)} long, too little to fold it on. Take a ` +
        'narrower hem, or cut it away there.',
    }));
}

/** The curves that have the hem on their inner face and are tighter than it reaches into them. */
export function hemsWiderThanRadii(
  strip: Strip,
  { hemStage }: CheckedLimits,
): WorkabilityWarning[] {
  const reach = hemReach(strip.edge, strip.bendRule.thickness, hemStage);
  if (strip.edge.foldedWidth === 0) {
    return [];
  }
  return strip.runs
    .filter((run) => run.kind === 'curve')
    .map((run, index) => ({ run, curve: index + 1, radius: innerRadius(strip, run) }))
    .filter(({ run, radius }) => {
      return (
        hemAtBend(run.direction, strip.hemFace) === 'closes' && radius < reach - LENGTH_TOLERANCE
      );
    })
    .map(({ run: { from, to }, curve, radius }) => ({
      code: 'hem wider than radius',
      place: { on: 'curve', curve, from, to },
      measured: radius,
      limit: reach,
      unit: 'mm',
      source: 'common practice',
      message:
        `The hem reaches ${printLength(reach)} off the wall, but curve ${curve} has an inside ` +
        `radius of ${printLength(radius)}, so that the hem does not fit into it. Take a narrower ` +
        'hem, fold it flat before the strip is bent, or cut it away there.',
    }));
}
