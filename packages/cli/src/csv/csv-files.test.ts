import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Planned } from '../job-sheet/job-sheet.js';
import { read, SMALL_ORDER } from '../order/small-order.test.support.js';
import { anyPlan } from '../plan-file/random-plan.test.support.js';
import { CSV_NAMES, csvFiles } from './csv-files.js';
import { csvText, figure } from './csv-text.js';

const RUNS = { numRuns: 50 };
const small = read(
  SMALL_ORDER.replace(
    '  hem: 1/4\n',
    '  hem: 1/4\n  margin: 15\n  labour: { hourly rate: 30, minutes a cut: 0.7 }\n',
  ),
);
const anyPlanned: fc.Arbitrary<Planned> = anyPlan.map((file) => ({ sized: small, file }));

type Row = Readonly<Record<string, string>>;
const parsed = (text: string): readonly Row[] => parse(text, { bom: true, columns: true });
const table = (planned: Planned, name: (typeof CSV_NAMES)[number]): readonly Row[] =>
  parsed(csvFiles(planned).find((file) => file.name === name)?.text ?? '');
const sum = (rows: readonly Row[], column: string): number =>
  rows.reduce((all, row) => all + Math.round(Number(row[column] || 0) * 100), 0);
/** What stands in a cell for a text: with an apostrophe where a spreadsheet would reckon. */
const cellOf = (text: string | undefined) =>
  text !== undefined && '=+-@\t＝＋－＠'.includes(text.charAt(0)) ? `'${text}` : text;

describe('the tables for spreadsheets', () => {
  it('are read back as the plan has it: pieces, cuts, purchases, quote', () => {
    fc.assert(
      fc.property(anyPlanned, (planned) => {
        const { file } = planned;
        const pieces = table(planned, 'pieces.csv');
        const placed = file.layouts.flatMap(({ pieces: own }) => own);
        expect(pieces.map(({ Name }) => Name)).toEqual(placed.map(({ blank }) => cellOf(blank)));
        expect(pieces.map((row) => [Number(row['Left mm']), Number(row['Up mm'])])).toEqual(
          placed.map(({ x, y }) => [x, y]),
        );
        for (const row of pieces) {
          const blank = file.blanks[Number(row.No) - 1];
          expect(row.Name).toBe(cellOf(blank?.id));
          expect([row['Length mm'], row['Width mm']]).toEqual([
            `${blank?.length}`,
            `${blank?.width}`,
          ]);
        }
        const cuts = table(planned, 'cuts.csv');
        file.layouts.forEach((layout, index) => {
          const own = cuts.filter(({ Layout }) => Layout === `${index + 1}`);
          let next = 1;
          for (const row of own) {
            expect(row['First cut']).toBe(`${next}`);
            next = Number(row['Last cut']) + 1;
          }
          expect(next).toBe(layout.cuts.length + 1);
        });
        const purchases = table(planned, 'purchases.csv');
        expect(purchases.map(({ Sheet, Count }) => [Sheet, Count])).toEqual(
          file.buy.map(({ stock, count }) => [cellOf(stock), `${count}`]),
        );
        expect(sum(purchases, 'Cost')).toBe(Math.round(file.parts.bought * 100));
        const quote = table(planned, 'quote.csv');
        const blanks = quote.filter(({ Part }) => Part === 'Blank');
        const [total] = quote.filter(({ Part }) => Part === 'Total');
        expect(blanks.map(({ Name }) => Name)).toEqual(file.blanks.map(({ id }) => cellOf(id)));
        for (const column of ['Metal', 'Work', 'Margin', 'Price']) {
          expect(sum(blanks, column)).toBe(Math.round(Number(total?.[column]) * 100));
        }
      }),
      RUNS,
    );
  });

  it('hold no cell that a spreadsheet would reckon out, whatever the names', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary' }), { minLength: 1 }), (names) => {
        const starts = ['=1+1', '@x', '+1', '-1', '\tx', '＝1', ...names];
        const rows = parse(
          csvText(
            ['a', 'b'],
            starts.map((name) => [name, figure(-2)]),
          ),
          {
            bom: true,
            from: 2,
          },
        ) as string[][];
        expect(rows.map(([name]) => name?.replace(/^'(?=[=+\-@\t\r\n＝＋－＠])/u, ''))).toEqual(
          starts,
        );
        for (const [name, number] of rows) {
          expect(name).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/u);
          expect(number).toBe('-2');
        }
      }),
    );
  });

  it('end their lines with CR LF and quote what must be (RFC 4180, 2)', () => {
    const text = csvText(
      ['Name', 'Count'],
      [
        ['say "when", then', figure(2)],
        ['two\nlines', figure(3)],
      ],
    );
    expect(text).toBe('\uFEFFName,Count\r\n"say ""when"", then",2\r\n"two\nlines",3\r\n');
  });

  it('are the same bytes for the same plan', () => {
    fc.assert(
      fc.property(anyPlanned, (planned) => {
        expect(csvFiles(planned)).toEqual(
          csvFiles({ ...planned, file: structuredClone(planned.file) }),
        );
        expect(csvFiles(planned).map(({ name }) => name)).toEqual([...CSV_NAMES]);
      }),
      { numRuns: 15 },
    );
  });
});
