import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';
import { onePieceASheet } from '../one-piece-a-sheet.test.support.js';
import { SMALL_ORDER } from '../order/small-order.test.support.js';
import { RING } from '../ring.test.support.js';

const HEAD = SMALL_ORDER.slice(0, SMALL_ORDER.indexOf('items:'));
const TABLE = 'name;quantity;size;outline;depth\nLid;2;6 x 4 in;;\nMoon;3;3,5 x 1,5;crescent;1\n';

/** A folder with an order in a folder of its own, and tables beside it and above. */
function shop(order = `${HEAD}items: items.csv\n`) {
  const cwd = temporaryFolder();
  mkdirSync(join(cwd, 'orders'));
  writeFileSync(join(cwd, 'orders', 'order.yaml'), order);
  writeFileSync(join(cwd, 'orders', 'items.csv'), TABLE);
  writeFileSync(join(cwd, 'other.csv'), 'name,quantity,size\nTray,4,5 x 5\n');
  const plan = (...words: string[]) =>
    run(['plan', 'orders/order.yaml', ...words], { cwd, planner: onePieceASheet });
  return { cwd, plan };
}

describe('items that stand in a table', () => {
  test('are planned from the file that the order names, beside it', async () => {
    const { exitCode, stdout, stderr } = await shop().plan();
    expect([exitCode, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^ +1 {2}Lid +6 +4 +2$/m);
    expect(stdout).toMatch(/^ +2 {2}Moon +/m);
  });

  test('or from the file that is given, in place of the items of the order', async () => {
    for (const order of [undefined, SMALL_ORDER, HEAD]) {
      const { exitCode, stdout } = await shop(order).plan('--items', 'other.csv');
      expect(exitCode).toBe(0);
      expect(stdout).toMatch(/^ +1 {2}Tray +5 +5 +4$/m);
      expect(stdout).not.toContain('Lid');
    }
  });

  test('may name drawings, from the folder of the order', async () => {
    const { cwd, plan } = shop();
    writeFileSync(join(cwd, 'orders', 'ring.svg'), RING);
    writeFileSync(join(cwd, 'other.csv'), 'name,svg,depth,size,quantity\nRing,ring.svg,1,4 in,1\n');
    const { exitCode, stdout, stderr } = await plan('--items', 'other.csv');
    expect([exitCode, stderr]).toEqual([0, '']);
    expect(stdout).toContain('Ring');
  });

  test('that cannot be read are told in the line of the order, or by the name that was given', async () => {
    const missing = await shop(`${HEAD}items: lost.csv\n`).plan();
    expect(missing).toMatchObject({ exitCode: 2, stdout: '' });
    expect(missing.stderr).toBe(
      'orders/order.yaml:22: items must be a list, or the file of a table such as items.csv; ' +
        'lost.csv cannot be read: there is no such file or folder; check the spelling of the path\n',
    );
    const given = await shop().plan('--items', 'lost.csv');
    expect(given.stderr).toBe(
      'lost.csv: cannot be read: there is no such file or folder; check the spelling of the path\n',
    );
    expect((await shop().plan('--items', '')).stderr).toBe(
      'stripwright: --items is missing; give the file of a table\n',
    );
  });

  test('are told of by the name that one would type', async () => {
    const { cwd, plan } = shop();
    writeFileSync(join(cwd, 'orders', 'items.csv'), TABLE.replace('Lid;2', 'Lid;two'));
    expect((await plan()).stderr).toBe(
      'orders/items.csv: row 2, column B: quantity must be a whole number of at least 1; found two\n',
    );
  });
});

test('a report has bold headings where the output takes colour, and is the same without', async () => {
  const { cwd, plan } = shop();
  const plain = await plan();
  const words = ['plan', 'orders/order.yaml'];
  const coloured = await run(words, { cwd, planner: onePieceASheet, colour: true });
  expect(coloured.stdout).toContain('\u001b[1mBuy\u001b[0m\n');
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
  expect(coloured.stdout.replaceAll(/\u001b\[[\d;]*m/g, '')).toBe(plain.stdout);
  expect(plain.stdout).not.toContain('\u001b');
});
