import type { Weights } from '../problem.js';
import { checkWholeIfAny } from './check-value.js';
import { MOST } from './limits.js';

/** @throws ProblemError unless every weight is a whole number */
export function checkWeights(weights: Weights = {}): void {
  checkWholeIfAny(weights.layout, 0, MOST, 'weights.layout');
  checkWholeIfAny(weights.gauge, 0, MOST, 'weights.gauge');
  checkWholeIfAny(weights.cut, 0, MOST, 'weights.cut');
}
