import { z } from 'zod';
import type { Complaint } from '../faults/fault.js';
import { foldSpelling, nearestSpelling } from '../faults/nearest-spelling.js';
import { accept, type Reading, refuse } from '../faults/reading.js';
import { parsePrice } from '../money.js';

/** The largest count of anything in an order. */
export const MOST = 100_000;
const LONGEST_NAME = 60;

/** What a schema's custom issue carries, for the fault made of it. */
export interface IssueParams {
  readonly complaint: Complaint;
  readonly found?: string | undefined;
}

/** Adds a complaint about the value at hand, or at a path inside it, to a schema's issues. */
export function complain(
  context: z.RefinementCtx,
  input: unknown,
  complaint: Complaint,
  path: readonly (string | number)[] = [],
): void {
  const params: IssueParams = { complaint, found: foundText(input) };
  context.issues.push({ code: 'custom', input, path: [...path], params: { ...params } });
}

/** How a message names what was found in a field. */
export function foundText(input: unknown): string | undefined {
  if (input === undefined || input === null) return undefined;
  if (typeof input === 'string') return input;
  if (Array.isArray(input)) return 'a list';
  return 'a section';
}

/** A field that holds one text, which `read` turns into a value. */
export function field<T>(read: (text: string) => Reading<T>, wanted: Complaint, hint?: string) {
  return z.unknown().transform((raw, context): T => {
    if (raw === undefined || raw === null || raw === '') {
      complain(context, raw, hint === undefined ? { code: 'missing' } : { code: 'missing', hint });
      return z.NEVER;
    }
    const reading = typeof raw === 'string' ? read(raw) : refuse(wanted);
    if (reading.ok) return reading.value;
    complain(context, raw, reading.complaint);
    return z.NEVER;
  });
}

/** One line of text, trimmed, with something in it. */
export function readText(text: string): Reading<string> {
  return text.trim() === '' ? refuse({ code: 'missing' }) : readLine(text, LONGEST_NAME);
}

/** One line of text, trimmed, perhaps empty. */
export function readLine(text: string, longest: number): Reading<string> {
  const trimmed = text.trim();
  // Control and format characters would garble a report or a drawing.
  if (/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u.test(trimmed))
    return refuse({ code: 'control characters' });
  if (trimmed.length > longest) return refuse({ code: 'text too long', limit: longest });
  return accept(trimmed);
}

export const textField = (hint: string) => field(readText, { code: 'not text' }, hint);

/** The path of a file: one line, as long as need be. */
function readPath(text: string): Reading<string> {
  const trimmed = text.trim();
  if (trimmed === '') return refuse({ code: 'missing' });
  return /\p{Cc}/u.test(trimmed) ? refuse({ code: 'control characters' }) : accept(trimmed);
}

export const pathField = (hint: string) => field(readPath, { code: 'not text' }, hint);

/** A whole number from `least` to `most`, both included, written with digits alone. */
export function readCount(text: string, least: number, most = MOST): Reading<number> {
  const trimmed = text.trim();
  if (!/^\d+$/.test(trimmed)) return refuse({ code: 'not a whole number', least });
  const count = Number(trimmed);
  if (count < least) return refuse({ code: 'not a whole number', least });
  if (count > most) return refuse({ code: 'too large', limit: `${most}` });
  return accept(count);
}

export const countField = (least: number, hint: string) =>
  field((text) => readCount(text, least), { code: 'not a whole number', least }, hint);

/** An amount of money, 0 or more. */
export const priceField = (hint: string) => field(parsePrice, { code: 'not a price' }, hint);

/** A plain number, signed, decimal or a fraction: `0.44`, `-1.5`, `1/3`. */
export function readNumber(text: string): Reading<number> {
  const match = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+))(?:\s*\/\s*(\d+))?$/.exec(text.trim());
  if (match === null) return refuse({ code: 'not a number' });
  const under = match[2] === undefined ? 1 : Number(match[2]);
  if (under === 0) return refuse({ code: 'zero denominator' });
  const value = Number(match[1]) / under;
  return Math.abs(value) <= 1e6 ? accept(value) : refuse({ code: 'too large', limit: '1000000' });
}

/** A number of degrees, with or without their name: `30`, `30 deg`, `30 degrees`. */
export function readAngle(text: string): Reading<number> {
  return readNumber(text.replace(/\s*(?:deg|degrees|\u00b0)\s*$/i, ''));
}

/** `yes`, `no`, or YAML's own `true` and `false`. */
export function readYesNo(text: string): Reading<boolean> {
  const word = text.trim().toLowerCase();
  if (word === 'yes' || word === 'true') return accept(true);
  if (word === 'no' || word === 'false') return accept(false);
  return refuse({ code: 'not yes or no' });
}

export const yesNoField = () => field(readYesNo, { code: 'not yes or no' }, 'yes or no');

/** One of some words. Case and hyphens do not matter. */
export function readChoice<T extends string>(text: string, choices: readonly T[]): Reading<T> {
  const match = choices.find((choice) => foldSpelling(choice) === foldSpelling(text));
  if (match !== undefined) return accept(match);
  return refuse({ code: 'not a choice', choices, nearest: nearestSpelling(text, choices) });
}

export const choiceField = <T extends string>(choices: readonly T[]) =>
  field(
    (text) => readChoice(text, choices),
    { code: 'not a choice', choices },
    choices.join(' or '),
  );
