import {
  checkWorkability,
  coarseMarks,
  curveNotices,
  type HemNotice,
  leastRadii,
  type Notch,
  notchNotices,
  type Refold,
  type WorkabilityWarning,
} from '@stripwright/strip-geometry';
import type { Shop } from '../order/order.js';
import type { Cutter } from '../order/strips.js';
import type { PlanFileStrip } from './plan-file.js';

/** What of a cutter is hard to make, or to use; each thing once, of its outline with the first part. */
export function stripWarnings(
  { outline, strip, handwork, part }: Cutter,
  notches: readonly Notch[],
  folded: Refold,
  { rule, metal }: Pick<Shop, 'rule' | 'metal'>,
): NonNullable<PlanFileStrip['warnings']> {
  const hard = checkWorkability(outline, strip, {
    leastRadius: leastRadii[metal.name] ?? 0,
    ...handwork,
    smallestMark: rule.mark,
  }).filter(({ place }) => place.on !== 'outline' || part === undefined || part.number === 1);
  const notices = [...notchNotices(strip, notches), ...curveNotices(strip, handwork)];
  return [
    ...notices
      .filter((notice) => !isToldAs(notice, hard))
      .map(({ code, message, source }) => ({ kind: code, message, source })),
    ...[...hard, ...coarseMarks(folded, rule.mark)].map(({ code, message, source }) => ({
      kind: code,
      message,
      source,
    })),
  ];
}

/** Whether a warning says of the same bend or curve that the hem does not fit there at all. */
function isToldAs(notice: HemNotice, hard: readonly WorkabilityWarning[]): boolean {
  switch (notice.code) {
    case 'notch too narrow':
      return hard.some(
        ({ code, place }) =>
          code === 'hem in a sharp fold' && place.on === 'bend' && place.bend === notice.bend,
      );
    case 'curve too tight':
      return hard.some(
        ({ code, place }) =>
          code === 'hem wider than radius' && place.on === 'curve' && place.curve === notice.curve,
      );
    default:
      return false;
  }
}
