import type { CuttingProblem } from './problem.js';
import { checkCrowding } from './problem-checks/check-crowding.js';
import { checkKeepRules } from './problem-checks/check-keep-rules.js';
import { checkPieces } from './problem-checks/check-pieces.js';
import { checkShear } from './problem-checks/check-shear.js';
import { checkStock } from './problem-checks/check-stock.js';
import { checkName } from './problem-checks/check-value.js';
import { checkWeights } from './problem-checks/check-weights.js';
import { MOST_ENTRIES } from './problem-checks/limits.js';
import { ProblemError, type ProblemFault } from './problem-error.js';

/**
 * Refuses a problem whose data are not what the types promise, or are beyond
 * what can be computed exactly.
 * @throws ProblemError for the first fault, naming the field.
 */
export function checkProblem(problem: CuttingProblem): void {
  checkList(problem.pieces, 'pieces', 'no pieces', 'at least one piece is needed');
  checkList(problem.stock, 'stock', 'no stock', 'at least one sheet or offcut is needed');
  checkPieces(problem.pieces);
  checkStock(problem.stock);
  checkShear(problem);
  checkCrowding(problem);
  if ((problem.keep ?? []).length > MOST_ENTRIES) tooMany(problem.keep ?? [], 'keep');
  checkKeepRules(problem);
  checkWeights(problem.weights);
  unique(problem.pieces, 'pieces');
  unique(problem.stock, 'stock');
}

function checkList(
  list: readonly unknown[],
  path: string,
  code: ProblemFault,
  needed: string,
): void {
  if (list.length === 0) throw new ProblemError(code, path, `is empty; ${needed}`, list);
  if (list.length > MOST_ENTRIES) tooMany(list, path);
}

function tooMany(list: readonly unknown[], path: string): never {
  const message = `must have at most ${MOST_ENTRIES} entries; got ${list.length}`;
  throw new ProblemError('too many to compute', path, message, list.length);
}

function unique(items: readonly { readonly id: string }[], path: string): void {
  const seen = new Set<string>();
  items.forEach(({ id }, i) => {
    checkName(id, `${path}[${i}].id`);
    if (seen.has(id)) {
      const message = `'${id}' stands for an earlier one already; every id must be its own`;
      throw new ProblemError('id used twice', `${path}[${i}].id`, message, id);
    }
    seen.add(id);
  });
}
