import { type CuttingPlan, type CuttingProblem, ProblemError } from '@stripwright/nesting';
import type { Environment } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import type { Order } from '../order/order.js';
import type { SizedOrder } from '../order/strips.js';
import { counted } from '../report/counted.js';
import { cannotBeCut } from './cannot-be-cut.js';

/**
 * Plans an order and verifies the plan before anyone sees it.
 *
 * @throws CommandError with exit code 3 where the order cannot be cut from its
 *   stock, and 1 where the plan is not good
 */
export async function makePlan(
  { order, blanks }: SizedOrder,
  problem: CuttingProblem,
  { planner, stderr, clock }: Environment,
  timeLimitSeconds: number | undefined,
): Promise<CuttingPlan> {
  const pieces = blanks.reduce((sum, { quantity }) => sum + quantity, 0);
  const started = clock();
  if (stderr.isTerminal) stderr.write(`Planning ${counted(pieces, 'piece')} ...`);
  const outcome = await planner
    .planCutting(problem, timeLimitSeconds === undefined ? {} : { timeLimitSeconds })
    .catch((error: unknown) => {
      throw error instanceof ProblemError ? refusedProblem(error, order) : error;
    })
    .finally(() => {
      // Back to the start of the line, and clear it.
      if (stderr.isTerminal) stderr.write('\r\u001b[K');
    });
  if (outcome.status !== 'planned') {
    const message = cannotBeCut(outcome, problem, order.shop.rule, timeLimitSeconds);
    throw new CommandError(EXIT.cannotBeCut, message);
  }
  const faults = planner.verifyPlan(problem, outcome.plan);
  if (faults.length > 0) {
    const listed = faults.map(({ layout, message }) =>
      layout === undefined ? `  plan: ${message}` : `  layouts[${layout}]: ${message}`,
    );
    throw new CommandError(
      EXIT.ourFault,
      ['the plan failed its own check and is not used:', ...listed].join('\n'),
    );
  }
  if (stderr.isTerminal) {
    stderr.write(`Planned in ${((clock() - started) / 1000).toFixed(1)} s\n`);
  }
  return outcome.plan;
}

/** A problem that the planner refuses, such as lengths of too many marks, in the order's terms. */
function refusedProblem({ code, path, message }: ProblemError, { sheets }: Order): CommandError {
  const place = path
    .replace(/^pieces\b/, 'items')
    .replace(/^stock\[(\d+)\]/, (_, digits: string) => {
      const index = Number(digits);
      return index < sheets.length ? `sheets[${index}]` : `offcuts[${index - sheets.length}]`;
    });
  const what = message.replace(`${path}: `, '');
  const advice =
    code === 'too large to compute exactly' ? '; lengths are in marks: name a coarser one' : '';
  return new CommandError(EXIT.badInput, `${place} ${what}${advice}`);
}
