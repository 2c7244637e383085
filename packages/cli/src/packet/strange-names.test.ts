import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { plan } from '../commands/plan.js';
import { runAlone, temporaryFolder } from '../environment.test.support.js';
import { onePieceASheet } from '../one-piece-a-sheet.test.support.js';
import { columnsOf } from '../report/terminal-width.js';
import { checkPacketFile, type Skeleton } from './check-packet-file.test.support.js';
import { hostileTexts } from './hostile-text.test.support.js';
import { isOwnName } from './packet-names.js';

/** Every name that an order can give. */
interface Names {
  readonly order: string;
  readonly sheet: string;
  readonly offcut: string;
  readonly items: readonly [string, string, string];
}

const PLAIN: Names = {
  order: 'Order',
  sheet: 'Sheet',
  offcut: 'A',
  items: ['One', 'Two', 'Three'],
};

function orderOf({ order, sheet, offcut, items }: Names): string {
  const [heart, hexagon, lid] = items;
  return stringify({
    name: order,
    shop: { units: 'mm', currency: '$', hem: '6', tab: '12', 'keep offcuts from': '100 x 20 mm' },
    sheets: [{ name: sheet, size: '500 x 300 mm', price: '7.40' }],
    offcuts: [{ name: offcut, size: '300 x 100 mm' }],
    items: [
      { name: heart, outline: 'heart', across: '75', depth: '25', quantity: '3' },
      {
        name: hexagon,
        outline: 'regular polygon',
        sides: '6',
        side: '40',
        depth: '25',
        quantity: '2',
      },
      { name: lid, blank: '150 x 75 mm', quantity: '1' },
    ],
  });
}

async function packetOf(names: Names) {
  const cwd = temporaryFolder();
  writeFileSync(join(cwd, 'order.yaml'), orderOf(names));
  const ran = await runAlone(
    plan,
    'order.yaml',
    { out: 'packet' },
    { cwd, planner: onePieceASheet },
  );
  expect([ran.stderr, ran.exitCode]).toEqual(['', 0]);
  expect(readdirSync(cwd).sort()).toEqual(['order.yaml', 'packet']);
  const files = readdirSync(join(cwd, 'packet'), { withFileTypes: true });
  const skeletons: Record<string, Skeleton> = {};
  for (const file of files) {
    expect(file.isFile()).toBe(true);
    // No name of the order is part of the name of a file, and every file is taken away when stale.
    expect(isOwnName(file.name), file.name).toBe(true);
    skeletons[file.name] = checkPacketFile(file.name, readFileSync(join(cwd, 'packet', file.name)));
  }
  const json: unknown = JSON.parse(readFileSync(join(cwd, 'packet', 'plan.json'), 'utf8'));
  return { stdout: ran.stdout, skeletons, json };
}

describe('strange names', () => {
  test('are nothing but text, in every file of the packet and in the report', async () => {
    const plain = await packetOf(PLAIN);
    const different = fc.uniqueArray(hostileTexts, { minLength: 6, maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(
        different,
        async ([order = '', sheet = '', offcut = '', a = '', b = '', c = '']) => {
          const names: Names = { order, sheet, offcut, items: [a, b, c] };
          const { stdout, skeletons, json } = await packetOf(names);
          expect(skeletons).toEqual(plain.skeletons);
          expect(json).toMatchObject({
            order: { name: order },
            stock: [{ id: sheet }, { id: offcut }],
            blanks: names.items.map((id) => ({ id })),
          });
          for (const line of stdout.split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(80);
        },
      ),
      { numRuns: 60 },
    );
  });

  test.each([
    ['a line break', 'a\nb'],
    ['an escape of terminals', '\u001b[2J'],
    ['a C1 control', '\u009b2J'],
    ['an override of direction', 'a\u202eb'],
    ['an isolate of direction', '\u2067a'],
    ['a line separator', 'a\u2028b'],
    ['a zero-width space', 'a\u200bb'],
  ])('with %s are refused, and what is said of them is plain text', async (_what, name) => {
    const cwd = temporaryFolder();
    const names: Names = {
      order: name,
      sheet: name,
      offcut: `${name}x`,
      items: [name, 'Two', 'Three'],
    };
    writeFileSync(join(cwd, 'order.yaml'), orderOf(names));
    const { exitCode, stderr } = await runAlone(plan, 'order.yaml', { out: 'packet' }, { cwd });
    expect(exitCode).toBe(2);
    expect(stderr.match(/must be one line of plain text/g)).toHaveLength(4);
    expect(stderr.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
    expect(readdirSync(cwd)).toEqual(['order.yaml']);
  });
});
