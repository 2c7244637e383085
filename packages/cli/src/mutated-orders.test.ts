import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { plan } from './commands/plan.js';
import { type Ran, run, runAlone, temporaryFolder } from './environment.test.support.js';
import {
  countedWork,
  edited,
  edits,
  expectPlainSpeech,
  mutate,
  mutations,
} from './mutated-input.test.support.js';
import { onePieceASheet } from './one-piece-a-sheet.test.support.js';
import { SMALL_ORDER } from './order/small-order.test.support.js';

// With those of mutated-tables and mutated-plans, 5,000 files.
const FIELDS = 1_500;
const TEXTS = 1_000;

const cwd = temporaryFolder();

async function planText(text: string): Promise<Ran> {
  writeFileSync(join(cwd, 'order.yaml'), text);
  const { counts, files, planner } = countedWork();
  const ran = await runAlone(plan, 'order.yaml', {}, { cwd, planner, files });
  // The order, and at most a drawing for each item or a table of them.
  expect(counts.reads).toBeLessThan(40);
  expect(counts.plans).toBeLessThanOrEqual(1);
  return ran;
}

describe('whatever the order', () => {
  test('with fields changed, left out, added or doubled', { timeout: 900_000 }, async () => {
    const seen = new Map<number, number>();
    await fc.assert(
      fc.asyncProperty(mutations, async (list) => {
        const document: unknown = parse(SMALL_ORDER, { schema: 'failsafe' });
        for (const mutation of list) mutate(document, mutation);
        const ran = await planText(stringify(document));
        seen.set(ran.exitCode, (seen.get(ran.exitCode) ?? 0) + 1);
        expectPlainSpeech(ran, [0, 2, 3]);
      }),
      { numRuns: FIELDS },
    );
    // The mutations are neither all harmless nor all fatal.
    expect([...seen.keys()].sort()).toEqual(expect.arrayContaining([0, 2]));
  });

  test('with stretches of its text cut out, doubled or overwritten', {
    timeout: 900_000,
  }, async () => {
    const signs = ['\n', ': ', '- ', '\t', '[', '}', '"', '&x ', '*x', '#'];
    await fc.assert(
      fc.asyncProperty(edits(SMALL_ORDER.length, signs), async (list) => {
        expectPlainSpeech(await planText(edited(SMALL_ORDER, list)), [0, 2, 3]);
      }),
      { numRuns: TEXTS },
    );
  });

  test('from the command line', async () => {
    await fc.assert(
      fc.asyncProperty(mutations, async (list) => {
        const document: unknown = parse(SMALL_ORDER, { schema: 'failsafe' });
        for (const mutation of list) mutate(document, mutation);
        writeFileSync(join(cwd, 'order.yaml'), stringify(document));
        const ran = await run(['plan', 'order.yaml'], { cwd, planner: onePieceASheet });
        expectPlainSpeech(ran, [0, 2, 3]);
      }),
      { numRuns: 50 },
    );
  });
});
