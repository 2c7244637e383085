import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plan } from './commands/plan.js';
import { runAlone, temporaryFolder } from './environment.test.support.js';
import {
  countedWork,
  edited,
  edits,
  expectPlainSpeech,
  oddTexts,
} from './mutated-input.test.support.js';
import { SMALL_ORDER } from './order/small-order.test.support.js';

const CELLS = 900;
const TEXTS = 600;

const cwd = temporaryFolder();
writeFileSync(
  join(cwd, 'order.yaml'),
  `${SMALL_ORDER.slice(0, SMALL_ORDER.indexOf('items:'))}items: items.csv\n`,
);

const ROWS: readonly (readonly string[])[] = [
  ['name', 'outline', 'size', 'depth', 'quantity', 'hem', 'sides', 'across flats'],
  ['Heart', 'heart', '4 in', '1 in', '3', '', '', ''],
  ['Comb', 'regular polygon', '', '1', '2', '0', '6', '3'],
  ['Lid', 'blank', '6 x 4 in', '', '2', '', '', ''],
  ['Oval', 'oval', '3 1/2 x 2 in', '3/4', '1', '1/8', '', ''],
];

async function planTable(text: string) {
  writeFileSync(join(cwd, 'items.csv'), text);
  const { counts, files, planner } = countedWork();
  const ran = await runAlone(plan, 'order.yaml', {}, { cwd, planner, files });
  expect(counts.reads).toBeLessThan(40);
  expect(counts.plans).toBeLessThanOrEqual(1);
  expectPlainSpeech(ran, [0, 2, 3]);
  return ran.exitCode;
}

const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;

test('whatever the cells of a table', { timeout: 900_000 }, async () => {
  const changes = fc.array(
    fc.record({
      row: fc.nat({ max: ROWS.length - 1 }),
      column: fc.nat({ max: 8 }),
      text: fc.oneof(oddTexts, fc.constantFrom(...ROWS.flat())),
    }),
    { maxLength: 4 },
  );
  const seen = new Set<number>();
  await fc.assert(
    fc.asyncProperty(changes, fc.constantFrom(',', ';', '\t'), async (list, separator) => {
      const rows = ROWS.map((row) => [...row]);
      for (const { row, column, text } of list) {
        const cells = rows[row];
        if (cells !== undefined) cells[column] = text;
      }
      const lines = rows.map((row) =>
        Array.from(row, (cell) => quoted(cell ?? '')).join(separator),
      );
      seen.add(await planTable(lines.join('\n')));
    }),
    { numRuns: CELLS },
  );
  expect([...seen].sort()).toEqual(expect.arrayContaining([0, 2]));
});

test('whatever is cut out of the text of a table, doubled or overwritten', {
  timeout: 900_000,
}, async () => {
  const table = ROWS.map((row) => row.join(',')).join('\n');
  const signs = ['\n', '\r', ',', ';', '\t', '"', '""', '\ufeff', 'sep=;\n', ' x '];
  const seen = new Set<number>();
  await fc.assert(
    fc.asyncProperty(edits(table.length, signs), async (list) => {
      seen.add(await planTable(edited(table, list)));
    }),
    { numRuns: TEXTS },
  );
  expect([...seen].sort()).toEqual(expect.arrayContaining([0, 2]));
});
