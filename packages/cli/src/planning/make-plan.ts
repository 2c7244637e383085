import { type CuttingPlan, type CuttingProblem, ProblemError } from '@stripwright/nesting';
import type { Environment, Output } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import type { Order } from '../order/order.js';
import type { SizedOrder } from '../order/strips.js';
import { cannotBeCut } from './cannot-be-cut.js';
import { ProgressLine } from './progress-line.js';

export interface PlanningLimits {
  readonly timeLimitSeconds?: number;
  readonly seed?: number;
}

/**
 * Plans an order and verifies the plan before anyone sees it. At Ctrl-C it makes
 * do with the best plan so far.
 *
 * @param watch where a person watches, told how far it is
 * @throws CommandError with exit code 3 where the order cannot be cut from its
 *   stock, and 1 where the plan is not good
 */
export async function makePlan(
  { order, blanks }: SizedOrder,
  problem: CuttingProblem,
  { planner, interrupts, clock }: Environment,
  limits: PlanningLimits,
  watch: Output | undefined,
): Promise<CuttingPlan> {
  const pieces = blanks.reduce((sum, { quantity }) => sum + quantity, 0);
  const started = clock();
  const line = watch && new ProgressLine(watch, pieces, order.shop.currency);
  const control = new AbortController();
  const noMoreInterrupts = interrupts.once(() => {
    control.abort();
    line?.stopping();
  });
  const outcome = await planner
    .planCutting(problem, {
      ...limits,
      signal: control.signal,
      ...(line && { onProgress: (progress) => line.tell(progress) }),
    })
    .catch((error: unknown) => {
      throw error instanceof ProblemError ? refusedProblem(error, order, problem) : error;
    })
    .finally(() => {
      noMoreInterrupts();
      line?.clear();
    });
  const { aborted } = control.signal;
  if (outcome.status !== 'planned') {
    const limit = aborted ? 'called off' : limits.timeLimitSeconds;
    throw new CommandError(EXIT.cannotBeCut, cannotBeCut(outcome, problem, order.shop.rule, limit));
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
  const seconds = ((clock() - started) / 1000).toFixed(1);
  watch?.write(aborted ? `Stopped after ${seconds} s\n` : `Planned in ${seconds} s\n`);
  return outcome.plan;
}

/** A problem that the planner refuses, such as lengths of too many marks, in the order's terms. */
function refusedProblem(
  { code, path, message }: ProblemError,
  { sheets, offcuts }: Order,
  { stock }: CuttingProblem,
): CommandError {
  const place = path
    .replace(/^pieces\b/, 'items')
    .replace(/^stock\[(\d+)\]/, (_, digits: string) => {
      const index = Number(digits);
      if (index < sheets.length) return `sheets[${index}]`;
      const after = index - sheets.length;
      return after < offcuts.length ? `offcuts[${after}]` : (stock[index]?.id ?? 'stock');
    });
  const what = message.replace(`${path}: `, '');
  const advice =
    code === 'too large to compute exactly' ? '; lengths are in marks: name a coarser one' : '';
  return new CommandError(EXIT.badInput, `${place} ${what}${advice}`);
}
