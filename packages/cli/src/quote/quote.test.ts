import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Planned, Table } from '../job-sheet/job-sheet.js';
import type { Labour } from '../order/order.js';
import { altered, faultsOf, read, SMALL_ORDER } from '../order/small-order.test.support.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { anyPlan } from '../plan-file/random-plan.test.support.js';
import { smallPlan } from '../plan-file/small-plan.test.support.js';
import { type Exact, exactly } from './exact.js';
import { quoteOf } from './quote.js';
import { quoteSections } from './quote-sections.js';

const small = read(SMALL_ORDER);
const anyExact: fc.Arbitrary<Exact> = fc
  .tuple(fc.nat(5000), fc.constantFrom(1n, 3n, 10n, 100n, 1_000_000n))
  .map(([over, under]) => ({ over: BigInt(over), under }));
const maybe = fc.option(anyExact, { nil: undefined });
const anyLabour: fc.Arbitrary<Labour> = fc.record({
  hourlyRate: fc.nat(20_000),
  minutes: fc.record({ cut: maybe, bend: maybe, notch: maybe, seam: maybe }),
});

const plannedWith = (file: PlanFile, labour?: Labour, margin?: Exact): Planned => ({
  sized: { ...small, order: { ...small.order, shop: { ...small.order.shop, labour, margin } } },
  file,
});
const anyPlanned = fc
  .tuple(anyPlan, fc.option(anyLabour, { nil: undefined }), maybe)
  .map(([file, labour, margin]) => plannedWith(file, labour, margin));

const sum = (amounts: readonly number[]): number =>
  amounts.reduce((all, amount) => all + amount, 0);

/** An amount as printed, in coins: `$7.40`, `-1.20 kr`. */
const coinsIn = (printed: string): number =>
  (printed.startsWith('-') ? -1 : 1) * Number(printed.replace(/[^\d]/gu, ''));

const tablesOf = (planned: Planned): readonly Table[] =>
  quoteSections(planned).flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'table' ? [block] : [])),
  );

describe('a quote', () => {
  it('adds up: lines to totals, blanks to the order, metal in to metal out', () => {
    fc.assert(
      fc.property(anyPlanned, (planned) => {
        const quote = quoteOf(planned);
        const { blanks, work, metalCost, workCost, margin, price, metal } = quote;
        expect(metalCost).toBe(Math.round(planned.file.cost * 100));
        expect(sum(work.map(({ money }) => money))).toBe(workCost);
        expect(metalCost + workCost + margin).toBe(price);
        expect(sum(blanks.map((line) => line.metal))).toBe(metalCost);
        expect(sum(blanks.map((line) => line.work))).toBe(workCost);
        expect(sum(blanks.map((line) => line.margin))).toBe(margin);
        expect(sum(blanks.map((line) => line.price))).toBe(price);
        for (const line of blanks) expect(line.metal + line.work + line.margin).toBe(line.price);
        const [came, went] = [metal.from, metal.to].map((lines) => sum(lines.map((l) => l.area)));
        expect(Math.abs((came ?? 0) / (went ?? 1) - 1)).toBeLessThan(1e-9);
        for (const { area } of [...metal.from, ...metal.to]) expect(area).toBeGreaterThan(-1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('prints lines whose sums are the totals that it prints', () => {
    fc.assert(
      fc.property(anyPlanned, (planned) => {
        const tables = tablesOf(planned);
        expect(tables.length).toBeGreaterThanOrEqual(3);
        for (const { caption, columns, rows } of tables) {
          const [total, ...lines] = [...rows].reverse();
          columns.forEach(({ heading }, column) => {
            const isSum = ['Money', 'Metal', 'Work', 'Margin', 'Price'].includes(heading);
            if (!isSum || column === 0) return;
            const parts = lines.map((line) => coinsIn(line[column] || '0'));
            expect(sum(parts), `${caption}, ${heading}`).toBe(coinsIn(total?.[column] ?? ''));
          });
        }
      }),
      { numRuns: 40 },
    );
  });

  it('is what a hand reckons', async () => {
    const text = altered(
      '  keep offcuts from: 6 x 1 in\n',
      `  keep offcuts from: 6 x 1 in
  thickness: 0.0110 in
  margin: 12.5 %
  labour:
    hourly rate: 36
    minutes a cut: 0.5
    minutes a bend: 1/3
    minutes a notch: 0.25
    minutes a seam: 4
`,
    );
    const { order: sized, file } = await smallPlan(text);
    const quote = quoteOf({ sized, file });
    const cuts = sum(file.layouts.map(({ count, cuts: made }) => count * made.length));
    const count = (of: (strip: NonNullable<PlanFile['blanks'][number]['strip']>) => number) =>
      sum(file.blanks.map(({ quantity, strip }) => (strip ? quantity * of(strip) : 0)));
    const bends = count((strip) => strip.bends.length + strip.curves.length);
    const notches = count(({ notches = [], snips = [] }) => notches.length + snips.length);
    // $36 an hour is 60 cents a minute: 30 cents a cut, 20 a bend, 15 a notch, $2.40 a seam.
    // Three hearts, two hexagons and a house have a seam each; the lids have none.
    expect(quote.work.map(({ count: many, money }) => [many, money])).toEqual([
      [cuts, 30 * cuts],
      [bends, 20 * bends],
      [notches, 15 * notches],
      [6, 6 * 240],
    ]);
    expect(quote.workCost).toBe(30 * cuts + 20 * bends + 15 * notches + 1440);
    const cost = quote.metalCost + quote.workCost;
    expect(quote.margin).toBe(Math.floor((cost * 125 + 500) / 1000));
    // 0.011 in of steel at 7.85 g a cubic centimetre: 2.19 mg a square millimetre.
    for (const { area, weight } of quote.metal.to) {
      expect(weight).toBeCloseTo((area * 0.2794 * 7.85) / 1000, 6);
    }
  });

  it('without work or margin is the metal alone', async () => {
    const { order: sized, file } = await smallPlan();
    const quote = quoteOf({ sized, file });
    expect([quote.work, quote.margin, quote.price]).toEqual([[], 0, quote.metalCost]);
    const captions = tablesOf({ sized, file }).map(({ caption }) => caption);
    expect(captions).not.toContain('Work');
  });

  it('is the same every time', () => {
    fc.assert(
      fc.property(anyPlanned, (planned) => {
        expect(JSON.stringify(quoteSections(planned))).toBe(JSON.stringify(quoteSections(planned)));
      }),
      { numRuns: 10 },
    );
    expect(exactly(3)).toEqual({ over: 3n, under: 1n });
  });
});

describe('labour and margin of an order', () => {
  const withLines = (lines: string) => faultsOf(altered('  hem: 1/4\n', `  hem: 1/4\n${lines}\n`));

  it.each([
    ['  margin: -5', 'shop.margin must be 0 or more; found -5'],
    ['  margin: much', 'shop.margin must be a plain number such as 0.44; found much'],
    ['  labour: { minutes a cut: 1 }', 'shop.labour.hourly rate is missing'],
    [
      '  labour: { hourly rate: 30, minutes a fold: 1 }',
      'shop.labour.minutes a fold is not a known field',
    ],
    [
      '  labour: { hourly rate: 30, minutes a cut: soon }',
      'shop.labour.minutes a cut must be a plain number such as 0.44; found soon',
    ],
  ])('%s', (line, message) => {
    const faults = withLines(line);
    expect(faults.length).toBe(1);
    expect(faults[0]).toContain(message);
  });

  it('are read', () => {
    expect(withLines('  margin: 20\n  labour: { hourly rate: 30.50, minutes a cut: 0.5 }')).toEqual(
      [],
    );
  });
});
