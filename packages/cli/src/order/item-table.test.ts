import { families } from '@stripwright/strip-geometry';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DocumentError } from '../faults/fault.js';
import { accept, refuse } from '../faults/reading.js';
import { readOrder } from './read-order.js';
import { SMALL_ORDER } from './small-order.test.support.js';

const ITEMS_AT = SMALL_ORDER.indexOf('items:');
const HEAD = SMALL_ORDER.slice(0, ITEMS_AT);

function readTable(text: string, order = `${HEAD}items: list.csv\n`) {
  const table = { file: 'list.csv', text: accept(text) };
  return readOrder(order, 'order.yaml', families, undefined, table);
}

function faultsOf(text: string, order?: string): readonly string[] {
  try {
    readTable(text, order);
    return [];
  } catch (error) {
    if (error instanceof DocumentError) return error.message.split('\n');
    throw error;
  }
}

/** What a spreadsheet, its locale and its writer may do to a table. */
interface Quirks {
  readonly separator: ',' | ';' | '\t';
  readonly end: '\n' | '\r\n' | '\r';
  readonly mark: boolean;
  readonly quoted: boolean;
  readonly comma: boolean;
  readonly blankRows: boolean;
  readonly told: boolean;
  readonly upper: boolean;
  readonly order: readonly number[];
}

const quirks: fc.Arbitrary<Quirks> = fc.record({
  separator: fc.constantFrom(',', ';', '\t'),
  end: fc.constantFrom('\n', '\r\n', '\r'),
  mark: fc.boolean(),
  quoted: fc.boolean(),
  comma: fc.boolean(),
  blankRows: fc.boolean(),
  told: fc.boolean(),
  upper: fc.boolean(),
  order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 7 }),
});

const COLUMNS = ['name', 'outline', 'size', 'depth', 'quantity', 'hem', 'turn'] as const;

/** Items, as an order writes them and as a table does. */
const items = fc
  .array(
    fc.record({
      outline: fc.constantFrom('heart', 'circle', 'blank', 'oval', 'gingerbread figure'),
      size: fc.integer({ min: 30, max: 120 }),
      tenths: fc.integer({ min: 1, max: 9 }),
      depth: fc.constantFrom('1 in', '25.4 mm', '3/4', '1 1/8"'),
      quantity: fc.integer({ min: 1, max: 40 }),
      hem: fc.constantFrom('', '0', '1/4'),
      turn: fc.constantFrom('', 'yes', 'no'),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((all) =>
    all.map(({ size, tenths, ...item }, index) => ({
      ...item,
      name: `Item ${index + 1}, "odd"; \u05d2`,
      long: `${size}.${tenths} mm`,
      wide: `${(size * 2) / 4}.5 mm`.replace('.5.5', '.5'),
    })),
  );

type Items = typeof items extends fc.Arbitrary<infer T> ? T : never;

function asYaml(all: Items): string {
  const lines = all.map(({ name, outline, long, wide, depth, quantity, hem, turn }) => {
    const sizes: Readonly<Record<string, string>> = {
      heart: `across: ${long}`,
      circle: `across: ${long}`,
      'gingerbread figure': `high: ${long}`,
      oval: `long: ${long}, wide: ${wide}`,
    };
    const made =
      outline === 'blank'
        ? `blank: ${long} x ${wide}`
        : `outline: ${outline}, ${sizes[outline]}, depth: '${depth}'${hem === '' ? '' : `, hem: ${hem}`}`;
    const turned = turn === '' ? '' : `, turn: ${turn}`;
    return `  - { name: '${name}', ${made}, quantity: ${quantity}${turned} }`;
  });
  return `${HEAD}items:\n${lines.join('\n')}\n`;
}

function asTable(all: Items, { separator, ...q }: Quirks): string {
  const rows = all.map(({ name, outline, long, wide, depth, quantity, hem, turn }) => {
    const two = outline === 'blank' || outline === 'oval';
    const flat = outline === 'blank';
    return {
      ...{ name, outline, quantity: `${quantity}`, turn },
      size: two ? `${long} x ${wide}` : long,
      depth: flat ? '' : depth,
      hem: flat ? '' : hem,
    };
  });
  const quote = (text: string) =>
    q.quoted || /["\n]/.test(text) || text.includes(separator)
      ? `"${text.replaceAll('"', '""')}"`
      : text;
  // A comma between figures is a decimal one; those of the names are not.
  const number = (text: string) => (q.comma ? text.replaceAll(/(\d)\.(\d)/g, '$1,$2') : text);
  const columns = q.order.flatMap((index) => COLUMNS[index] ?? []);
  const head = columns.map((name) => quote(q.upper ? ` ${name.toUpperCase()} ` : name));
  const lines = [
    head.join(separator),
    ...rows.map((row) => columns.map((name) => quote(number(row[name]))).join(separator)),
  ];
  const blank = separator.repeat(columns.length - 1);
  const spaced = q.blankRows ? lines.flatMap((line) => ['', line, blank]) : lines;
  const all_ = [...(q.told ? [`sep=${separator}`] : []), ...spaced];
  return `${q.mark ? '\ufeff' : ''}${all_.join(q.end)}${q.end}`;
}

describe('items from a table', () => {
  test('are what they would be in the order, whatever a spreadsheet does to it', () => {
    fc.assert(
      fc.property(items, quirks, (all, odd) => {
        const expected = readOrder(asYaml(all), 'order.yaml', families);
        // As text, since outlines carry functions.
        expect(JSON.stringify(readTable(asTable(all, odd)))).toBe(JSON.stringify(expected));
      }),
      { numRuns: 100 },
    );
  });

  test('may be plain rectangles without saying so, and have columns of their own outlines', () => {
    const text = [
      'name,quantity,size,outline,depth,sides,across flats,corners',
      'Lid,2,6 x 4 in,,,,,',
      'Comb,3,,Regular-Polygon,1,6,3,',
      'House,1,,polygon,1,,,"0,0; 3,0; 3,2; 1 1/2,3 1/4; 0,2"',
      'Crescent,1,3 1/2 x 1 3/8 in,crescent,1,,,',
    ].join('\n');
    const { order } = readTable(text);
    expect(order.items.map(({ name, kind }) => [name, kind])).toEqual([
      ['Lid', 'rectangle'],
      ['Comb', 'cutter'],
      ['House', 'cutter'],
      ['Crescent', 'cutter'],
    ]);
  });

  test('stand in place of those of the order', () => {
    const { order } = readTable('name,quantity,size\nLid,2,6 x 4 in', SMALL_ORDER);
    expect(order.items.map(({ name }) => name)).toEqual(['Lid']);
  });
});

describe('the faults of a table', () => {
  test('are all told at once, each with its row and column', () => {
    const text = [
      'nmae,outline,size,quantty,hem,frob,hem',
      'Heart,hart,3,1.5,x,1,1',
      'Heart,heart,3 x 4,2',
      '',
      'Hex,regular polygon,3,2,,,,spare',
      'Oval,oval,3 by 2,"1,200"',
      ',circle,0,5',
    ].join('\n');
    expect(faultsOf(text)).toEqual([
      'list.csv: row 1, column A: nmae is no known column; did you mean "name"?',
      'list.csv: row 1, column D: quantty is no known column; did you mean "quantity"?',
      expect.stringMatching(
        /^list\.csv: row 1, column F: frob is no known column; known here: name, outline, size, depth, quantity and \d+ more$/,
      ),
      'list.csv: row 1, column G: hem is the heading of two columns; leave one out',
      'list.csv: row 1: depth is missing; give the height of the finished cutter',
      'list.csv: row 2, column D: quantty must be a whole number of at least 1; found 1.5',
      'list.csv: row 2, column E: hem must be a length such as 1 5/8, 1.625 in or 41.3 mm; found x',
      expect.stringMatching(
        /^list\.csv: row 2, column B: outline must be .*; found hart; did you mean "heart"\?$/,
      ),
      'list.csv: row 3, column C: size must be a length such as 1 5/8, 1.625 in or 41.3 mm; found 3 x 4',
      'list.csv: row 3, column A: nmae must be a name of its own; found Heart, as in row 2',
      'list.csv: row 5, column H: has more cells than there are headings; found spare',
      'list.csv: row 5, column C: size may be the side, across flats or across corners of a regular polygon; name the column so',
      'list.csv: row 5: sides is missing; give a whole number: how many sides, at least 3',
      'list.csv: row 6, column D: quantty must be a whole number of at least 1; found 1,200',
      'list.csv: row 6, column C: size must be a length such as 1 5/8, 1.625 in or 41.3 mm; found 3 by 2',
      'list.csv: row 6: wide is missing; give a length: from side to side',
      'list.csv: row 7, column A: nmae is missing; give a name for the list of strips',
      'list.csv: row 7, column C: size must be above 0; found 0',
    ]);
  });

  test('come after those of the order, each with its place', () => {
    const order = `${HEAD.replace('1/32 in', 'fine')}items: list.csv\n`;
    expect(faultsOf('name,quantity,size\nLid,many,6 x 4 in', order)).toEqual([
      'order.yaml:4: shop.smallest mark must be a length such as 1 5/8, 1.625 in or 41.3 mm; found fine',
      'list.csv: row 2, column B: quantity must be a whole number of at least 1; found many',
    ]);
  });

  test.each([
    [
      '',
      'list.csv: the file is empty; its first row has headings such as name, outline, size, depth, quantity and',
    ],
    ['\ufeff\r\n;;;\r\n', 'list.csv: the file is empty;'],
    [
      'name,outline\n"Heart,heart',
      'list.csv: not readable as CSV: a cell begins with a quote that never ends',
    ],
    ['name,quantity,size', 'list.csv: row 1: is empty; give at least one entry'],
    ['name,quantity\nHeart,1', 'list.csv: row 1: outline is missing; give the outline'],
    ['name,quantity,outline\nLid,1,blank', 'list.csv: row 2: blank is missing; give a size'],
    [
      'name,quantity,size,blank\nLid,1,6 x 4,6 x 4',
      'list.csv: row 2, column C: size stands for blank, which is given too; leave one out',
    ],
    [
      'name,quantity,size,outline,depth\nA,1,3,polygon,1',
      'list.csv: row 2, column C: size tells nothing of a polygon',
    ],
    [
      'name,quantity,size\n\u202eLid,1,6 x 4',
      'list.csv: row 2, column A: name must be one line of plain text; found \\u202eLid',
    ],
    [
      'name,quantity,size\n"Lid\nlarge",1,6 x 4\nBox,x,6 x 4',
      'list.csv: row 2, column A: name must be one line of plain text; found Lid\\nlarge\nlist.csv: row 3, column B',
    ],
    [
      `name,quantity\n${'x'.repeat(1_000_000)},1`,
      'list.csv: not readable as CSV: longer than a million characters',
    ],
  ])('%j', (text, message) => {
    expect(faultsOf(text).join('\n')).toContain(message);
  });

  test('that cannot be read leave the rest of the order checked', () => {
    const table = { file: 'list.csv', text: refuse({ code: 'unreadable', reason: 'gone' }) };
    const order = `${HEAD.replace('1/32 in', 'fine')}items: list.csv\n`;
    expect(() => readOrder(order, 'order.yaml', families, undefined, table)).toThrow(
      /^order\.yaml:4: .*\nlist\.csv: cannot be read: gone$/,
    );
  });
});
