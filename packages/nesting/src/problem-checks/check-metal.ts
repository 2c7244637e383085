import type { Metal } from '../problem.js';
import { ProblemError } from '../problem-error.js';
import { checkName, shown } from './check-value.js';

/** @throws ProblemError unless metal has a name and a thickness above 0, where it has any */
export function checkMetal({ metal, thickness }: Metal, path: string): void {
  if (metal !== undefined) checkName(metal, `${path}.metal`);
  if (thickness === undefined) return;
  if (Number.isFinite(thickness) && thickness > 0) return;
  throw new ProblemError(
    'not a positive number',
    `${path}.thickness`,
    `must be a finite number above 0; got ${shown(thickness)}`,
    thickness,
  );
}

/** The name and thickness of a metal, to tell them apart by. */
export function metalKey({ metal, thickness }: Metal): string {
  return JSON.stringify([metal, thickness]);
}
