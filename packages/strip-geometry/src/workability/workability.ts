import type { Outline } from '../outline.js';
import type { Strip } from '../strip.js';
import { crowdedMarks } from './crowded-marks.js';
import { hemFolds } from './hem-folds.js';
import { checkedLimits, type WorkabilityLimits } from './limits.js';
import { narrowGaps } from './narrow-gaps.js';
import { pointedCorners } from './pointed-corners.js';
import { sharpRadii } from './sharp-radii.js';
import { shortFlats } from './short-flats.js';
import type { WorkabilityWarning } from './warning.js';
import { hemsWiderThanFlats, hemsWiderThanRadii } from './wide-hems.js';

/**
 * What of a cutter is hard to make by hand or to use: flats too short to hold,
 * radii the metal does not stand, hems that do not fit, corners and gaps that
 * dough sticks in, marks a rule cannot show. Warnings, not errors: the strip can be cut all the
 * same. The limits are options; where they come from is in each warning.
 *
 * @throws StripError naming the limit that is out of range.
 */
export function checkWorkability(
  outline: Outline,
  strip: Strip,
  limits: WorkabilityLimits = {},
): WorkabilityWarning[] {
  const checked = checkedLimits(limits);
  return [
    ...shortFlats(strip, checked),
    ...sharpRadii(strip, checked),
    ...hemFolds(strip, checked),
    ...hemsWiderThanFlats(strip),
    ...hemsWiderThanRadii(strip, checked),
    ...pointedCorners(strip, checked),
    ...narrowGaps(outline, checked),
    ...crowdedMarks(strip, checked),
  ];
}
