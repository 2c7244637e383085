import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { newShop, shopWithMetal } from './rack.test.support.js';

describe('rack add', () => {
  test('prints the marks to write, one for each of several alike', async () => {
    const { good } = newShop();
    expect(await good('add "17 1/2 x 6 in" --metal brass --count 2')).toBe(
      [
        'Write on the metal:',
        '  Mark  Size           Metal',
        '  CCY   17 1/2 x 6 in  brass',
        '  CDV   17 1/2 x 6 in  brass',
        '',
      ].join('\n'),
    );
  });

  test('keeps all that is told of it', async () => {
    const { good } = newShop();
    const told = await good(
      'add "6 x 17 1/2" --thickness 0.011in --rolled across --place " left rack " --from order --value 1.2 --json',
    );
    expect(JSON.parse(told)).toEqual([
      {
        mark: 'CCY',
        kind: 'offcut',
        length: 444.5,
        width: 152.4,
        metal: 'tinplate',
        thickness: 0.2794,
        rolled: 'across',
        place: 'left rack',
        from: 'order',
        value: 1.2,
        count: 1,
        promised: 0,
        since: '2026-03-02T09:00:00.000Z',
      },
    ]);
  });

  test('keeps its rack in the file that is named', async () => {
    const { good, cwd } = newShop();
    await good('add "9 x 9" --rack other/shop.rack');
    expect(readdirSync(cwd)).toEqual(['other']);
    expect(await good('list --rack other/shop.rack')).toContain('CCY   9 x 9');
  });
});

describe('rack receive', () => {
  test('puts sheets with those of their size', async () => {
    const { good } = await shopWithMetal();
    expect(await good('receive "20 x 28" --count 5 --thickness 0.011in')).toContain(
      '15 of Tinplate 20 x 28 lie there, with those that were there before',
    );
  });

  test('names those that nobody named', async () => {
    const { good } = newShop();
    expect(await good('receive "700 x 500 mm" --metal brass --count 5')).toContain(
      '5 of Brass 700 x 500 mm lie there.',
    );
  });

  test('takes no word on what a plan tells', async () => {
    const { bad } = newShop();
    expect(await bad('receive plan.json --count 3 --place here')).toBe(
      'stripwright: --count must be left out, as the plan tells it; found 3\n' +
        'stripwright: --place must be left out, as the plan tells it; found here\n',
    );
  });
});

describe('rack correct', () => {
  test('changes what it is told to, and nothing else', async () => {
    const { good } = await shopWithMetal();
    const before = JSON.parse(await good('list --json'));
    const after = JSON.parse(
      await good(
        'correct ccy --size "6 x 17 1/64" --rolled unknown --thickness 30ga --metal uncoated-steel --value none --place "" --json',
      ),
    );
    const { rolled, place, value, ...rest } = before[0];
    expect([rolled, place, value]).toEqual(['along', 'left rack', 1.2]);
    // The manufacturers' standard gauge for steel sheet: No 30 is 0.0120 in.
    expect(after).toEqual({
      ...rest,
      length: 432.196875,
      metal: 'uncoated steel',
      thickness: expect.closeTo(0.012 * 25.4, 3),
    });
    expect(JSON.parse(await good('list --json')).slice(1)).toEqual(before.slice(1));
  });

  test('counts sheets again, and renames them', async () => {
    const { good } = await shopWithMetal();
    expect(await good('correct CFN --count 7 --name "From the mill"')).toBe(
      [
        'Tinplate, 0.011 in thick: whole sheets, in inches',
        '  Mark  Count  Size     Name           Worth',
        '  CFN       7  28 x 20  From the mill   6.10',
        '',
      ].join('\n'),
    );
  });

  test.each([
    [
      'CCY',
      'CCY is what to correct, but nothing says how; give --size, --metal, --thickness, --rolled, ' +
        '--place, --from, --value, --name or --count',
    ],
    ['CCY --count 2', '--count must be left out, as CCY is an offcut; found 2'],
    ['CCX --place door', 'mark is misread, or lacks a sign; found CCX; did you mean CCY?'],
    ['CFN --count 1.5', '--count must be a whole number of at least 0; found 1.5'],
  ])('refuses %s', async (line, message) => {
    const { bad } = await shopWithMetal();
    expect(await bad(`correct ${line}`)).toBe(`stripwright: ${message}\n`);
  });
});

describe('rack remove', () => {
  test('takes an offcut off, or some sheets, and remembers why', async () => {
    const { good } = await shopWithMetal();
    expect(await good('remove cer --reason "bent in the shear"')).toBe('CER: is off the rack.\n');
    expect(await good('remove CFN --count 4 --reason sold')).toBe('CFN: 6 are left.\n');
    expect(await good('list')).not.toContain('CER');
    expect(await good('list --gone')).toMatch(/CER .* gone$/m);
    expect(await good('history CER')).toBe(
      [
        'CER: an offcut of 300 x 90 mm, copper; gone',
        '  Date        What     Count  Promised  For',
        '  2026-03-02  added       +1',
        '  2026-03-02  removed     -1',
        '              bent in the shear',
        '',
      ].join('\n'),
    );
  });

  test.each([
    ['CCY', '--reason is missing; give why, such as sold, bent or rusty'],
    ['CCY --reason " "', '--reason is missing; give why, such as sold, bent or rusty'],
    ['CFN --reason sold', '--count is missing; give how many of the 10 sheets'],
    ['CFN --reason sold --count 11', 'CFN: 10 lie there, not 11'],
    ['CCY --reason sold --count 2', 'CCY: 1 lie there, not 2'],
  ])('refuses %s', async (line, message) => {
    const { bad, good } = await shopWithMetal();
    const before = await good('list --json');
    expect(await bad(`remove ${line}`)).toBe(`stripwright: ${message}\n`);
    expect(await good('list --json')).toBe(before);
  });
});

describe('rack worth', () => {
  test('sums up what lies there', async () => {
    const { good } = await shopWithMetal();
    // 17.5 x 6 in and twice 300 x 90 mm are 0.729 + 0.581 sq ft; ten of 28 x 20 in are 38.889.
    expect(await good('worth')).toBe(
      [
        'On the rack',
        '                Count  Sq ft',
        '  Offcuts           3   1.31',
        '  Whole sheets     10  38.89',
        '  Worth in the books: 62.20, without 2 things that have no value of their own',
        '',
        'Scrap of all that was booked',
        '  0.00 sq ft; 0.0 oz, as far as thicknesses are known',
        '',
      ].join('\n'),
    );
    expect(JSON.parse(await good('worth --json'))).toMatchObject({
      offcuts: 3,
      sheets: 10,
      value: 62.2,
      unvalued: 2,
    });
    expect(await good('worth --units mm')).toContain('Sq m');
  });
});

describe('rack keep', () => {
  test('sets a rule, prints it in either units, and sets it anew', async () => {
    const { good } = newShop();
    expect(await good('keep')).toMatch(/^The rack has no rule yet/);
    await good('keep --least "1 x 6 in" --worth 1.40 --trouble 0.05');
    await good('keep --least "5 x 1 in" --worth 1.45 --trouble 0.05');
    expect(await good('keep --least "100 x 30 mm" --metal copper --thickness 16oz --worth 9')).toBe(
      [
        'Offcuts worth keeping',
        '  Metal     Thickness  Least (in)   Worth a sq ft  Trouble of each',
        '  copper    0.0216 in  100 x 30 mm           9.00             0.00',
        '  tinplate  any        5 x 1                 1.45             0.05',
        '',
      ].join('\n'),
    );
    // A square metre is 10.7639 square feet.
    expect(JSON.parse(await good('keep --json'))).toEqual([
      expect.objectContaining({ metal: 'copper', worthOfSquareMetre: 96.88, trouble: 0 }),
      {
        metal: 'tinplate',
        leastLength: 127,
        leastWidth: 25.4,
        worthOfSquareMetre: 15.61,
        trouble: 0.05,
      },
    ]);
  });

  test('is not set without the least size', async () => {
    const { bad } = newShop();
    expect(await bad('keep --worth x --metal copper')).toBe(
      'stripwright: --least is missing; give the least offcut that is kept, a size, either way round\n' +
        'stripwright: --worth must be a price with at most two decimals, such as 7.40; found x\n',
    );
  });
});

test('every fault of an action is told at once', async () => {
  const { bad } = newShop();
  expect(
    await bad(
      'add 17x --metal bras --thickness thin --rolled up --value 1.234 --count 0 --units ft',
    ),
  ).toBe(
    [
      '--units must be in or mm; found ft',
      'size must be a length and a width such as 28 x 20 in or 711 x 508 mm; found 17x',
      '--metal must be tinplate, uncoated steel, galvanized steel, copper, stainless steel, ' +
        'aluminium or brass; found bras; did you mean "brass"?',
      '--thickness must be a length such as 0.011 in, or 100 lb of tinplate, 28 ga of uncoated or ' +
        'galvanized steel, 16 oz of copper; found thin',
      '--rolled must be along or across; found up',
      '--value must be a price with at most two decimals, such as 7.40; found 1.234',
      '--count must be a whole number of at least 1; found 0',
      '',
    ]
      .map((line) => (line === '' ? '' : `stripwright: ${line}`))
      .join('\n'),
  );
});

test.each(['"a\u0007b"', '"a\u2028b"', '"a\u202eb"', `"${'x'.repeat(121)}"`])(
  'the text %j is refused',
  async (text) => {
    const { bad } = newShop();
    expect(await bad(`add "9 x 9" --place ${text}`)).toMatch(
      /^stripwright: --place must be (one line of plain text|a text of at most 120 characters)/,
    );
  },
);
