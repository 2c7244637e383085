import type { CuttingProblem } from '../problem.js';
import { ProblemError } from '../problem-error.js';
import { checkChoice, checkWholeIfAny } from './check-value.js';
import { LONGEST } from './limits.js';

/** @throws ProblemError for settings that make no sense, or that leave nothing of a sheet */
export function checkShear({ shear, stock }: CuttingProblem): void {
  checkChoice(shear.firstCut, ['along', 'across', 'either'], 'shear.firstCut');
  checkWholeIfAny(shear.longestCut, 1, Number.MAX_SAFE_INTEGER, 'shear.longestCut');
  checkWholeIfAny(shear.narrowestStrip, 0, LONGEST, 'shear.narrowestStrip');
  checkWholeIfAny(shear.kerf, 0, LONGEST, 'shear.kerf');
  checkWholeIfAny(shear.trim, 0, LONGEST, 'shear.trim');
  if (shear.stages !== undefined) checkChoice(shear.stages, [2, 3, 'free'], 'shear.stages');
  const { kerf = 0, trim = 0 } = shear;
  if (trim === 0) return;
  if (kerf > trim) {
    const message = `must be at most the trim of ${trim}, within which the blade runs; got ${kerf}`;
    throw new ProblemError('kerf wider than trim', 'shear.kerf', message, kerf);
  }
  stock.forEach((entry, i) => {
    if (entry.kind === 'offcut' || Math.min(entry.length, entry.width) > 2 * trim) return;
    const size = `${entry.length} x ${entry.width}`;
    const message = `of ${trim} on every edge leaves nothing of stock[${i}], which is ${size}`;
    throw new ProblemError('trim leaves nothing', 'shear.trim', message, trim);
  });
}
