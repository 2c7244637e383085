import fc from 'fast-check';
import { expect } from 'vitest';
import type { Files } from './environment.js';
import type { Ran } from './environment.test.support.js';
import { nodeFiles } from './node-environment.js';
import { onePieceASheet } from './one-piece-a-sheet.test.support.js';

/** How each line of a message begins: the place, or what of the order cannot be. */
const PLACE =
  /^(order\.yaml:\d+: \S|items\.csv: (row \d+(, column [A-Z]+)?: )?\S|plan\.json: \S|stripwright: (items|sheets)[ :])/;

/** Holds for every run whatever the input: no crash, no trace, and messages that say where. */
export function expectPlainSpeech(
  { exitCode, stdout, stderr }: Ran,
  codes: readonly number[],
): void {
  expect(codes, stderr).toContain(exitCode);
  expect(stderr === '').toBe(exitCode === 0);
  for (const line of stderr.split('\n').slice(0, -1)) expect(line).toMatch(PLACE);
  for (const text of [stdout, stderr]) {
    expect(text).not.toMatch(/undefined|NaN|\[object|^ +at .*:\d+:\d+/m);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: a terminal would obey them.
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
  }
}

/** A planner and files that count what is asked of them, so that work without end shows. */
export function countedWork() {
  const counts = { plans: 0, reads: 0 };
  const files: Files = {
    ...nodeFiles,
    read: (path) => {
      counts.reads += 1;
      return nodeFiles.read(path);
    },
  };
  const planner: typeof onePieceASheet = {
    ...onePieceASheet,
    planCutting: (problem, options) => {
      counts.plans += 1;
      return onePieceASheet.planCutting(problem, options);
    },
  };
  return { counts, files, planner };
}

// Nothing that a message may rightly quote looks like one of the slips looked for above.
export const oddTexts = fc.oneof(
  fc.constantFrom(
    ...['', ' ', '0', '-1', '1.5', '1/0', '1 5/8', '1e9', '99999999999999999999', '.inf', '.nan'],
    ...['yes', 'no', 'null', '~', 'in', 'mm', '1 mm', '1 ft', '3 x 4', '0 x 0', '40 x 30 in'],
    ...['heart', 'hart', 'regular polygon', 'polygon', 'A', 'Heart', '1 5/8 5', '\u20ac', '\u0000'],
    ...['edge', 'seam', 'wire', 'seam at', 'size is', 'metal', 'thickness', 'svg', 'corner angle'],
    ...['wired edge', 'grooved seam', 'copper', '28 ga', '16 oz', 'middle', '3', 'order.yaml'],
    ...[
      '\u202eHeart',
      '\u009b2J',
      '\u001b[31m',
      '\u2066a',
      '\u{1f36a}',
      '\u05dc\u05d1',
      '</svg>',
      '../a',
      "'",
    ],
    ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'a'.repeat(200), '\ud800'],
  ),
  fc.string({ maxLength: 12 }),
  fc.integer().map(String),
  fc.double().map((number) => number.toString().replace('NaN', '.nan')),
);

export const oddValues = fc.oneof(
  { weight: 6, arbitrary: oddTexts },
  { weight: 1, arbitrary: fc.constant(null) },
  { weight: 1, arbitrary: fc.array(oddTexts, { maxLength: 3 }) },
  { weight: 1, arbitrary: fc.array(fc.array(oddTexts, { maxLength: 3 }), { maxLength: 5 }) },
  { weight: 1, arbitrary: fc.dictionary(oddTexts, oddTexts, { maxKeys: 3 }) },
);

export interface Mutation {
  /** Which part, as a number to be taken modulo the count of parts. */
  readonly part: number;
  readonly kind: 'replace' | 'remove' | 'add' | 'double';
  readonly key: string;
  readonly value: unknown;
}

export const mutations = fc.array(
  fc.record<Mutation>({
    part: fc.nat({ max: 1000 }),
    kind: fc.constantFrom('replace', 'replace', 'replace', 'remove', 'add', 'double'),
    key: oddTexts,
    value: oddValues,
  }),
  { minLength: 1, maxLength: 4 },
);

type Holder = Record<string, unknown> | unknown[];

/** Every place in a document that holds a value. */
function places(node: unknown): { readonly holder: Holder; readonly key: string }[] {
  if (typeof node !== 'object' || node === null) return [];
  const holder = node as Holder;
  return Object.entries(node).flatMap(([key, value]) => [{ holder, key }, ...places(value)]);
}

export function mutate(document: unknown, { part, kind, key, ...mutation }: Mutation): void {
  // A copy, so that no later mutation puts a value into itself.
  const value = structuredClone(mutation.value);
  const all = places(document);
  const place = all[part % Math.max(1, all.length)];
  if (place === undefined) return;
  const { holder } = place;
  const at = place.key as keyof Holder;
  if (kind === 'replace') holder[at] = value as never;
  else if (Array.isArray(holder)) {
    if (kind === 'double') holder.push(structuredClone(holder[Number(place.key)]));
    else if (kind === 'remove') holder.splice(Number(place.key), 1);
    else holder.push(value);
  } else if (kind === 'remove') delete holder[place.key];
  else
    Object.defineProperty(holder, key, {
      value,
      enumerable: true,
      configurable: true,
      writable: true,
    });
}

/** Stretches of a text cut out, doubled or overwritten. */
export const edits = (length: number, signs: readonly string[]) =>
  fc.array(
    fc.record({
      from: fc.nat({ max: length }),
      length: fc.nat({ max: 40 }),
      text: fc.oneof(oddTexts, fc.constantFrom(...signs)),
      double: fc.boolean(),
    }),
    { minLength: 1, maxLength: 4 },
  );

type Edits = ReturnType<typeof edits> extends fc.Arbitrary<infer T> ? T : never;

export function edited(written: string, list: Edits): string {
  return list.reduce((order, { from, length, text, double }) => {
    const end = double ? from : from + length;
    const middle = double ? order.slice(from, from + length) : text;
    return order.slice(0, from) + middle + order.slice(end);
  }, written);
}
