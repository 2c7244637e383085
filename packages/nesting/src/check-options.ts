import { ProblemError } from './problem-error.js';

/**
 * Checks the numbers among the options of planning.
 * @throws ProblemError where one is not finite, since no time would ever be over by it
 */
export function checkOptions(options: {
  readonly timeLimitSeconds?: number;
  readonly seed?: number;
}): void {
  for (const name of ['timeLimitSeconds', 'seed'] as const) {
    const value = options[name];
    if (typeof value !== 'number' || Number.isFinite(value)) continue;
    throw new ProblemError(
      'not a finite number',
      `options.${name}`,
      `a finite number is needed, or none for the usual one; got ${value}`,
      value,
    );
  }
}
