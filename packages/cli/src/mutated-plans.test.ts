import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { check } from './commands/check.js';
import { runAlone, temporaryFolder } from './environment.test.support.js';
import {
  countedWork,
  expectPlainSpeech,
  mutate,
  mutations,
  oddValues,
} from './mutated-input.test.support.js';
import { smallPlan } from './plan-file/small-plan.test.support.js';

const PLANS = 1_000;

test('whatever the plan file', { timeout: 900_000 }, async () => {
  const cwd = temporaryFolder();
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
  const seen = new Set<number>();
  await fc.assert(
    fc.asyncProperty(changes, async (lists) => {
      const document: unknown = structuredClone(file);
      for (const mutation of lists.flat()) mutate(document, mutation);
      writeFileSync(join(cwd, 'plan.json'), JSON.stringify(document));
      const { counts, files } = countedWork();
      const ran = await runAlone(check, 'plan.json', {}, { cwd, files });
      expect(counts.reads).toBe(1);
      seen.add(ran.exitCode);
      expectPlainSpeech(ran, [0, 2]);
    }),
    { numRuns: PLANS },
  );
  expect(seen.has(2)).toBe(true);
});
