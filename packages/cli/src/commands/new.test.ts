import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { families } from '@stripwright/strip-geometry';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';
import { onePieceASheet } from '../one-piece-a-sheet.test.support.js';
import { readOrder } from '../order/read-order.js';

async function written(words: readonly string[], answers?: readonly string[]) {
  const cwd = temporaryFolder();
  const ran = await run(['new', 'shop', ...words], { cwd, ...(answers && { answers }) });
  const read = () => readFileSync(join(cwd, 'shop', 'order.yaml'), 'utf8');
  return { cwd, ran, read };
}

describe('an order to start from', () => {
  test.each(['in', 'mm'])('is planned without a change, in %s', async (units) => {
    const { cwd, ran } = await written(['--units', units]);
    expect(ran.stderr).toBe('');
    expect(ran.stdout).toBe(
      'Written: shop/order.yaml\nChange it to your order, then:\n' +
        '  stripwright plan shop/order.yaml --out shop/packet\n',
    );
    const planned = await run(['plan', 'shop/order.yaml', '--out', 'shop/packet'], { cwd });
    expect([planned.stderr, planned.exitCode]).toEqual(['', 0]);
    expect(planned.stdout).toContain(`Strips, in ${units === 'in' ? 'inches' : 'millimetres'}`);
    expect((await run(['check', 'shop/packet/plan.json'], { cwd })).exitCode).toBe(0);
  });

  test('is planned without a change, whatever sheets it is given', async () => {
    const cwd = temporaryFolder();
    const decimal = fc.tuple(fc.nat({ max: 3000 }), fc.constantFrom('', '.5', ',25', '.125'));
    const sheets = fc.tuple(
      fc.constantFrom('in', 'mm'),
      fc.array(fc.tuple(decimal, decimal, fc.nat({ max: 1e8 })), { minLength: 1, maxLength: 4 }),
    );
    let count = 0;
    await fc.assert(
      fc.asyncProperty(sheets, async ([units, all]) => {
        const texts = all.map(([[long, part], [wide, other], coins]) => {
          const scale = units === 'in' ? 0.04 : 1;
          const side = (least: number, more: number) => Math.ceil((least + more) * scale);
          return `${side(305, long)}${part} x ${side(102, wide)}${other} ${units} at ${(coins / 100).toFixed(2)}`;
        });
        count += 1;
        const folder = `shop ${count}`;
        const words = texts.flatMap((text) => ['--sheet', text]);
        const ran = await run(['new', folder, '--units', units, ...words], { cwd });
        expect(ran.stderr).toBe('');
        const planned = await run(['plan', `${folder}/order.yaml`, '--quiet'], {
          cwd,
          planner: onePieceASheet,
        });
        expect([planned.stderr, planned.exitCode]).toEqual(['', 0]);
        const { order } = readOrder(
          readFileSync(join(cwd, folder, 'order.yaml'), 'utf8'),
          'order.yaml',
          families,
        );
        expect(order.sheets.map(({ price }) => price)).toEqual(all.map(([, , coins]) => coins));
      }),
      { numRuns: 60 },
    );
  });

  test('asks on a terminal, again where it cannot read the answer', async () => {
    const { ran, read } = await written([], ['feet', 'mm', '700 x 500', '700 x 500 at 8,20', '']);
    expect(ran.stderr).toBe(
      'Units of the shop, in or mm (in): The answer must be in or mm; found feet\n' +
        'Units of the shop, in or mm (in): ' +
        'Sheets that can be bought, size and price of one, such as 710 x 510 mm at 7.40.\n' +
        'Sheet 1 (or Enter for the usual ones): ' +
        'The answer must be a size and a price such as 28 x 20 in at 7.40; found 700 x 500\n' +
        'Sheet 1 (or Enter for the usual ones): Sheet 2 (or Enter for no more): ',
    );
    expect(read()).toContain('  - { name: Tinplate 700 x 500 mm, size: 700 x 500, price: 8.20 }\n');
    expect(read()).toContain('\n  units: mm # or: in\n');
  });

  test('takes the usual for an empty answer, and asks for nothing that was given', async () => {
    const { ran, read } = await written(['--units', 'mm'], ['']);
    expect(ran.stderr).not.toContain('Units');
    expect(read()).toContain('size: 710 x 510 mm, price: 7.40');
    const given = await written(['--units', 'in', '--sheet', '28" x 20" at 7'], []);
    expect(given.ran.stderr).toBe('');
    expect(given.read()).toContain('size: "28\\" x 20\\"", price: 7.00');
  });

  test('is not written where the user ends the questions', async () => {
    const { cwd, ran } = await written([], ['in']);
    expect(ran.exitCode).toBe(2);
    expect(ran.stderr).toMatch(/stripwright: not all was answered, so nothing was written\n$/);
    expect(readdirSync(cwd)).toEqual([]);
  });

  test('never goes over another file', async () => {
    const cwd = temporaryFolder();
    mkdirSync(join(cwd, 'shop'));
    writeFileSync(join(cwd, 'shop', 'order.yaml'), 'mine');
    expect(await run(['new', 'shop'], { cwd })).toEqual({
      exitCode: 2,
      stdout: '',
      stderr:
        'stripwright: shop/order.yaml: cannot be written: ' +
        'a file of that name is there already; name another folder\n',
    });
    expect(readFileSync(join(cwd, 'shop', 'order.yaml'), 'utf8')).toBe('mine');
    expect(readdirSync(join(cwd, 'shop'))).toEqual(['order.yaml']);
  });

  test('goes here where no folder is named', async () => {
    const cwd = temporaryFolder();
    expect((await run(['new'], { cwd })).stdout).toMatch(/^Written: order\.yaml\n/);
    expect(readdirSync(cwd)).toEqual(['order.yaml']);
  });

  test('tells everything that is wrong with what was given', async () => {
    const { ran } = await written(['--units', 'ft', '--sheet', '3 x', '--sheet', '3 x 4 at x']);
    expect(ran.stderr.split('\n')).toEqual([
      'stripwright: --units must be in or mm; found ft',
      'stripwright: --sheet must be a size and a price such as 28 x 20 in at 7.40; found 3 x',
      'stripwright: --sheet must be a price with at most two decimals, such as 7.40; found 3 x 4 at x',
      '',
    ]);
    const small = await written(['--units', 'in', '--sheet', '8 x 4 at 1']);
    expect(small.ran.stderr).toBe('stripwright: --sheet must be at least 12 x 4 in; found 8 x 4\n');
  });
});
