import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { stocks } from '../../rack/csv/random-stock.test.support.js';
import { listTables } from '../../rack/list-table.js';
import { markOf } from '../../rack/offcut-mark.js';
import { columnsOf } from '../../report/terminal-width.js';
import { type Shop, shopWithMetal } from './rack.test.support.js';

let shop: Shop;
beforeAll(async () => {
  shop = await shopWithMetal();
});

describe('rack list', () => {
  test('prints tables by metal', async () => {
    expect(await shop.good('list')).toBe(
      [
        'Copper, thickness not known: offcuts, in inches',
        '  Mark  Size         Since',
        '  CDV   300 x 90 mm  2026-03-02',
        '  CER   300 x 90 mm  2026-03-02',
        '',
        'Tinplate, 0.011 in thick: offcuts, in inches',
        '  Mark  Size        Rolled  Place      Since       Worth',
        '  CCY   17 1/2 x 6  along   left rack  2026-03-02   1.20',
        '',
        'Tinplate, 0.011 in thick: whole sheets, in inches',
        '  Mark  Count  Size     Name              Worth',
        '  CFN      10  28 x 20  Tinplate 20 x 28   6.10',
        '',
        '3 offcuts and 10 whole sheets.',
        '',
        'Sheared edges cut: wear gloves and eye protection.',
        '',
      ].join('\n'),
    );
  });

  test.each<[filter: string, marks: readonly string[]]>([
    ['', ['CCY', 'CDV', 'CER', 'CFN']],
    ['--metal copper', ['CDV', 'CER']],
    ['--thickness 0.011in', ['CCY', 'CFN']],
    ['--at-least "6 x 17 1/2"', ['CCY', 'CFN']],
    ['--at-least "6 x 17.51"', ['CFN']],
    ['--at-least "300 x 90 mm" --kind offcuts', ['CCY', 'CDV', 'CER']],
    ['--kind sheets', ['CFN']],
    ['--metal brass', []],
    ['--free', ['CCY', 'CDV', 'CER', 'CFN']],
  ])('takes %s', async (filter, marks) => {
    const listed: { mark: string }[] = JSON.parse(await shop.good(`list ${filter} --json`));
    expect(listed.map(({ mark }) => mark)).toEqual(marks);
  });

  test('says so where nothing lies there', async () => {
    expect(await shop.good('list --metal brass')).toBe('Nothing lies there.\n');
  });

  test('prints a table for a spreadsheet', async () => {
    expect(await shop.good('list --csv --metal tinplate --units mm')).toBe(
      [
        'mark,kind,name,length,width,metal,thickness,rolled,place,from,value,since,promised,count',
        'CCY,offcut,,444.5 mm,152.4 mm,tinplate,0.2794 mm,along,left rack,spring order,1.20,2026-03-02,0,1',
        'CFN,sheets,Tinplate 20 x 28,711.2 mm,508 mm,tinplate,0.2794 mm,,,,6.10,2026-03-02,0,10',
        '',
      ].join('\r\n'),
    );
  });

  test.each([
    ['--csv --json', '--csv stands in place of --json; leave one out'],
    ['--kind offcut', '--kind must be offcuts or sheets; found offcut; did you mean "offcuts"?'],
    ['--rack ""', '--rack is missing; give the file of a rack'],
  ])('refuses %s', async (options, message) => {
    expect(await shop.bad(`list ${options}`)).toBe(`stripwright: ${message}\n`);
  });
});

test('lists stay within 80 columns, whatever lies there', () => {
  fc.assert(
    fc.property(fc.array(stocks, { maxLength: 12 }), fc.constantFrom('in', 'mm'), (all, units) => {
      const stock = all.map((one, index) => ({
        ...one,
        mark: markOf(index + 7500),
        promised: one.count,
        addedAt: '2026-03-02T09:00:00.000Z',
        bookValue: Math.min(one.bookValue ?? 0, 999_99),
      }));
      for (const line of listTables(stock, units)) expect(columnsOf(line)).toBeLessThanOrEqual(80);
    }),
  );
});
