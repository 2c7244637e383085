import { describe, expect, test } from 'vitest';
import { DocumentError } from '../../faults/fault.js';
import { markOf } from '../offcut-mark.js';
import { offcutOf, sheetsOf } from '../planned-cutting.test.support.js';
import type { MergeLine, RackStock } from '../rack.js';
import { readRackCsv } from './read-csv.js';

const stockOf = (number: number, stock: ReturnType<typeof offcutOf>): RackStock => ({
  ...stock,
  mark: markOf(number),
  addedAt: '2026-03-02T09:00:00.000Z',
  promised: 0,
});
// CCY, CDV and CER by their numbers.
const THERE: readonly RackStock[] = [
  stockOf(1, offcutOf({ bookValue: 120, rolled: 'along' })),
  stockOf(2, sheetsOf(9)),
  { ...stockOf(3, offcutOf()), count: 0 },
];

const read = (text: string): readonly MergeLine[] =>
  readRackCsv(text, 'rack.csv', 'mm', {
    find: (mark) => THERE.find((stock) => stock.mark === mark),
    marks: () => ['CCY', 'CDV'],
  });

function faultsOf(text: string): readonly string[] {
  try {
    read(text);
  } catch (error) {
    if (error instanceof DocumentError) return error.message.split('\n');
    throw error;
  }
  return [];
}

const NEW: MergeLine = {
  line: 2,
  kind: 'offcut',
  name: '',
  length: 444.5,
  width: 152.4,
  metal: 'tinplate',
  place: 'left, low',
  origin: '',
  count: 1,
};

describe('a table of a rack is read', () => {
  test.each<[what: string, text: string]>([
    ['as it is', 'length,width,place\n17 1/2 in,6 in,"left, low"\n'],
    ['with a byte order mark', '\uFEFFlength,width,place\n17 1/2 in,6 in,"left, low"\n'],
    ['parted by semicolons', 'length;width;place\n444,5;152,4;left, low\n'],
    ['parted by tabs', 'length\twidth\tplace\n444.5\t152.4\tleft, low\n'],
    ['with lines ended as on other systems', 'length,width,place\r\n444.5,152.4,"left, low"\r\n'],
    ['with lines ended as on old systems', 'length,width,place\r444.5,152.4,"left, low"'],
    ['with headings in any case and order', ' PLACE ,Width,"Length"\n"left, low",152.4,444.5'],
    ['in quotes throughout', '"length","width","place"\n"444.5","152.4","left, low"'],
    ['with inches written as quotes', 'length,width,place\n17 1/2",6","left, low"\n'],
    ['the short side first', 'length,width,place\n6 in,17 1/2 in,"left, low"\n'],
    ['with empty columns beyond the last', 'length,width,place,,\n444.5,152.4,"left, low",,\n'],
  ])('%s', (_what, text) => {
    expect(read(text)).toEqual([NEW]);
  });

  test('past blank lines, and each line by its number', () => {
    const lines = read('\n;;\nlength;width\n\n300;100\n ; \n200;90\n\n');
    expect(lines.map(({ line, length }) => [line, length])).toEqual([
      [5, 300],
      [7, 200],
    ]);
  });

  test('past a first line that tells the separator', () => {
    expect(read('sep=;\nlength;width;place\n444,5;152,4;left, low\n')).toEqual([
      { ...NEW, line: 3 },
    ]);
  });

  test('with columns left out, which leave what is there as it is', () => {
    expect(read('mark,place\nccy,door\nCDV,yard')).toEqual([
      { ...offcutOf({ bookValue: 120, rolled: 'along' }), mark: 'CCY', line: 2, place: 'door' },
      { ...sheetsOf(9), mark: 'CDV', line: 3, place: 'yard' },
    ]);
  });

  test('with empty cells, which take away what was there', () => {
    const [line] = read('mark,thickness,rolled,place,from,value\nCCY,,,,,');
    const { thickness, ...rest } = offcutOf({ place: '', origin: '' });
    expect(thickness).toBe(0.28);
    expect(line).toEqual({ ...rest, mark: 'CCY', line: 2 });
  });

  test('with sheets, named by their size where nobody named them', () => {
    expect(read('kind,length,width,metal,count\nsheets,700,500,Copper,12')).toEqual([
      {
        line: 2,
        kind: 'sheets',
        name: 'Copper 700 x 500 mm',
        length: 700,
        width: 500,
        metal: 'copper',
        place: '',
        origin: '',
        count: 12,
      },
    ]);
  });

  test('with thicknesses by the gauge of their metal', () => {
    // ASTM B101 as in the trade's tables: copper of 16 oz a square foot is 0.0216 in thick.
    const [line] = read('length,width,metal,thickness\n300,90,copper,16oz');
    expect(line?.thickness).toBeCloseTo(0.0216 * 25.4, 2);
  });
});

describe('faults of a table', () => {
  test('are told all at once, each with its row and column', () => {
    const text = [
      'mark,kind,name,length,width,metal,thickness,rolled,place,value,count,colour,legnth',
      'CCX,offcut,,300,90,,,,,,1,red,',
      ',ofcut,x,,9,gold,thick,up,,-3,0,,',
      'CCY,sheets,,300,90,tinplate,,,,1.234,1,,',
      'CDV,,,300,90,,,,,,,,,stray',
      'CER,offcut,,300,90,tinplate,,,,,1,,',
      `CCY,offcut,,300,90,tinplate,,,${'x'.repeat(121)},,2,,`,
      ',offcut,,"1,200",0,tinplate,,,"a\nb",,1,,',
    ].join('\n');
    expect(faultsOf(text)).toEqual([
      'rack.csv: row 1, column L: colour is no known column; known here: mark, kind, name, length, width, ' +
        'metal, thickness, rolled, place, from, value, since, promised, count',
      'rack.csv: row 1, column M: legnth is no known column; did you mean "length"?',
      'rack.csv: row 2, column A: mark is misread, or lacks a sign; found CCX; did you mean CCY?',
      'rack.csv: row 3, column B: kind must be offcut or sheets; found ofcut',
      'rack.csv: row 3, column D: length is missing; give a length such as 17 1/2 in',
      expect.stringMatching(
        /^rack\.csv: row 3, column F: metal must be tinplate, .* or brass; found gold$/,
      ),
      expect.stringMatching(
        /^rack\.csv: row 3, column G: thickness must be a length such as .*; found thick$/,
      ),
      'rack.csv: row 3, column H: rolled must be along or across; found up',
      'rack.csv: row 3, column J: value must be 0 or more; found -3',
      'rack.csv: row 3, column K: count must be a whole number of at least 1; found 0',
      'rack.csv: row 4, column B: kind must be offcut, as on the rack; found sheets',
      'rack.csv: row 4, column J: value must be a price with at most two decimals, such as 7.40; found 1.234',
      'rack.csv: row 5, column N: has more cells than there are headings; found stray',
      'rack.csv: row 5, column F: metal is missing; give its name',
      'rack.csv: row 5, column K: count is missing; give how many',
      'rack.csv: row 6, column A: mark is not on the rack; found CER',
      `rack.csv: row 7, column I: place must be a text of at most 120 characters; found ${'x'.repeat(57)}...`,
      'rack.csv: row 7, column K: count must be at most 1; found 2',
      'rack.csv: row 8, column D: length must be a length such as 1 5/8, 1.625 in or 41.3 mm; found 1,200',
      'rack.csv: row 8, column E: width must be above 0; found 0',
      'rack.csv: row 8, column I: place must be one line of plain text; found a\\nb',
    ]);
  });

  test('stand in rows as a spreadsheet shows them, where a cell holds two lines', () => {
    const text = 'sep=,\nlength,width,colour\n300,90,"a\nb"\n\n300,wide,';
    expect(faultsOf(text)).toEqual([
      expect.stringMatching(/^rack\.csv: row 2, column C: colour is no known column; known here: /),
      'rack.csv: row 5, column B: width must be a length such as 1 5/8, 1.625 in or 41.3 mm; found wide',
    ]);
    // What the rack refuses is told by the line of the file.
    expect(
      read('sep=,\nlength,width,since\n300,90,"a\nb"\n\n300,90,').map(({ line }) => line),
    ).toEqual([3, 6]);
  });

  test('where there is no such column are told by their row', () => {
    expect(faultsOf('length,place\n300,door')).toEqual([
      'rack.csv: row 2: width is missing; give a length such as 17 1/2 in',
    ]);
  });

  test.each<[what: string, text: string, message: string]>([
    [
      'an empty file',
      '\uFEFF\n \n',
      'rack.csv: the file is empty; its first row has headings such as mark, kind, name, length, ' +
        'width, metal, thickness, rolled, place, from, value, since, promised, count',
    ],
    [
      'a quote that never ends',
      'length,width\n"300,90\n',
      'rack.csv: not readable as CSV: a cell begins with a quote that never ends',
    ],
    [
      'a heading twice',
      'length,width,Length\n300,90,300',
      'rack.csv: row 1, column C: Length is the heading of two columns; leave one out',
    ],
    [
      'a mark twice',
      'mark,place\nCCY,a\nCDV,b\nccy,c',
      'rack.csv: row 4, column A: mark must stand in one row alone; found CCY, as in row 2',
    ],
    [
      'an offcut with a name',
      'length,width,name\n300,90,Piece',
      'rack.csv: row 2, column C: name must be left empty, as offcuts have marks only; found Piece',
    ],
  ])('%s', (_what, text, message) => {
    expect(faultsOf(text)).toEqual([message]);
  });
});
