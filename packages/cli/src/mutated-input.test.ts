import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { type Ran, run, temporaryFolder } from './environment.test.support.js';
import { onePieceASheet } from './one-piece-a-sheet.test.support.js';
import { SMALL_ORDER } from './order/small-order.test.support.js';
import { smallPlan } from './plan-file/small-plan.test.support.js';

const cwd = temporaryFolder();

/** Holds for every run whatever the input: no crash, no trace, and messages that say where. */
function expectPlainSpeech({ exitCode, stdout, stderr }: Ran, codes: readonly number[]): void {
  expect(codes, stderr).toContain(exitCode);
  expect(stderr === '').toBe(exitCode === 0);
  for (const line of stderr.split('\n').slice(0, -1)) {
    expect(line).toMatch(/^(order\.yaml:\d+: \S|plan\.json: \S|stripwright: (items|sheets)[ :])/);
  }
  for (const text of [stdout, stderr]) {
    expect(text).not.toMatch(/undefined|NaN|\[object|^ +at .*:\d+:\d+/m);
  }
}

// Nothing that a message may rightly quote looks like one of the slips looked for above.
const oddTexts = fc.oneof(
  fc.constantFrom(
    ...['', ' ', '0', '-1', '1.5', '1/0', '1 5/8', '1e9', '99999999999999999999', '.inf', '.nan'],
    ...['yes', 'no', 'null', '~', 'in', 'mm', '1 mm', '1 ft', '3 x 4', '0 x 0', '40 x 30 in'],
    ...['heart', 'hart', 'regular polygon', 'polygon', 'A', 'Heart', '1 5/8 5', '\u20ac', '\u0000'],
    ...['edge', 'seam', 'wire', 'seam at', 'size is', 'metal', 'thickness', 'svg', 'corner angle'],
    ...['wired edge', 'grooved seam', 'copper', '28 ga', '16 oz', 'middle', '3', 'order.yaml'],
    ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'a'.repeat(200), '\ud800'],
  ),
  fc.string({ maxLength: 12 }),
  fc.integer().map(String),
  fc.double().map((number) => number.toString().replace('NaN', '.nan')),
);

const oddValues = fc.oneof(
  { weight: 6, arbitrary: oddTexts },
  { weight: 1, arbitrary: fc.constant(null) },
  { weight: 1, arbitrary: fc.array(oddTexts, { maxLength: 3 }) },
  { weight: 1, arbitrary: fc.array(fc.array(oddTexts, { maxLength: 3 }), { maxLength: 5 }) },
  { weight: 1, arbitrary: fc.dictionary(oddTexts, oddTexts, { maxKeys: 3 }) },
);

interface Mutation {
  /** Which part, as a number to be taken modulo the count of parts. */
  readonly part: number;
  readonly kind: 'replace' | 'remove' | 'add' | 'double';
  readonly key: string;
  readonly value: unknown;
}

const mutations = fc.array(
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

function mutate(document: unknown, { part, kind, key, ...mutation }: Mutation): void {
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

async function planText(text: string): Promise<Ran> {
  writeFileSync(join(cwd, 'order.yaml'), text);
  return run(['plan', 'order.yaml'], { cwd, planner: onePieceASheet });
}

describe('whatever the order', () => {
  test('with fields changed, left out, added or doubled', async () => {
    const seen = new Set<number>();
    await fc.assert(
      fc.asyncProperty(mutations, async (list) => {
        const document: unknown = parse(SMALL_ORDER, { schema: 'failsafe' });
        for (const mutation of list) mutate(document, mutation);
        const ran = await planText(stringify(document));
        seen.add(ran.exitCode);
        expectPlainSpeech(ran, [0, 2, 3]);
      }),
      { numRuns: 300 },
    );
    // The mutations are neither all harmless nor all fatal.
    expect([...seen].sort()).toEqual(expect.arrayContaining([0, 2]));
  });

  test('with stretches of its text cut out, doubled or overwritten', async () => {
    const edits = fc.array(
      fc.record({
        from: fc.nat({ max: SMALL_ORDER.length }),
        length: fc.nat({ max: 40 }),
        text: fc.oneof(
          oddTexts,
          fc.constantFrom('\n', ': ', '- ', '\t', '[', '}', '"', '&x ', '*x', '#'),
        ),
        double: fc.boolean(),
      }),
      { minLength: 1, maxLength: 4 },
    );
    await fc.assert(
      fc.asyncProperty(edits, async (list) => {
        let order = SMALL_ORDER;
        for (const { from, length, text, double } of list) {
          const end = double ? from : from + length;
          order =
            order.slice(0, from) +
            (double ? order.slice(from, from + length) : text) +
            order.slice(end);
        }
        expectPlainSpeech(await planText(order), [0, 2, 3]);
      }),
      { numRuns: 200 },
    );
  });
});

test('whatever the plan file', async () => {
  const { file } = await smallPlan();
  const values = fc.oneof(
    oddValues,
    fc.constantFrom<unknown>(0, -1, 0.5, 1e300, 25.4, true, false, [], {}),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
  );
  const changes = fc.array(
    fc.tuple(mutations, values).map(([list, value]) => list.map((one) => ({ ...one, value }))),
    { minLength: 1, maxLength: 2 },
  );
  await fc.assert(
    fc.asyncProperty(changes, async (lists) => {
      const document: unknown = structuredClone(file);
      for (const mutation of lists.flat()) mutate(document, mutation);
      writeFileSync(join(cwd, 'plan.json'), JSON.stringify(document));
      expectPlainSpeech(await run(['check', 'plan.json'], { cwd }), [0, 2]);
    }),
    { numRuns: 300 },
  );
});
