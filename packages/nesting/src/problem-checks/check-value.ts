import { ProblemError } from '../problem-error.js';

/** @throws ProblemError unless the value is a whole number within the limits */
export function checkWhole(value: unknown, least: number, most: number, path: string): void {
  if (typeof value !== 'number' || !Number.isInteger(value) || value < least) {
    const message = `must be a whole number of at least ${least}; got ${shown(value)}`;
    throw new ProblemError('not a whole number', path, message, value);
  }
  if (value > most) {
    const message = `must be at most ${most}; got ${value}`;
    throw new ProblemError('too large to compute exactly', path, message, value);
  }
}

/** The same for what may be absent. */
export function checkWholeIfAny(value: unknown, least: number, most: number, path: string): void {
  if (value !== undefined) checkWhole(value, least, most, path);
}

/** @throws ProblemError unless the value is among the choices */
export function checkChoice(value: unknown, choices: readonly unknown[], path: string): void {
  if (choices.includes(value)) return;
  const message = `must be one of ${choices.map(shown).join(', ')}; got ${shown(value)}`;
  throw new ProblemError('not one of the choices', path, message, value);
}

/** @throws ProblemError unless the value is a text that is not empty */
export function checkName(value: unknown, path: string): void {
  if (typeof value === 'string' && value !== '') return;
  throw new ProblemError('not a name', path, `must be a name; got ${shown(value)}`, value);
}

/** A value as it is shown in a message. */
export function shown(value: unknown): string {
  return typeof value === 'string' ? `'${value}'` : String(value);
}
