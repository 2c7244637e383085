import { describe, expect, test } from 'vitest';
import { altered } from '../order/small-order.test.support.js';
import { smallPlan } from '../plan-file/small-plan.test.support.js';
import type { Booked, RackStock } from '../rack/rack.js';
import { onRack } from '../rack-stock/rack-view.test.support.js';
import { bookedReport } from './booking-report.js';

const lying: readonly RackStock[] = [
  onRack('CCY', 28, 20, { kind: 'sheets', place: '' }),
  onRack('CDV', 20, 14, { kind: 'sheets', place: '' }),
  onRack('CER', 17.5, 6),
];
const find = (mark: string) => lying.find((stock) => stock.mark === mark);

const booked: Booked = {
  booking: 7,
  job: {
    number: 3,
    name: 'Spring order',
    plan: 'digest',
    state: 'partly booked',
    since: '2026-03-02T09:00:00.000Z',
    layouts: [
      { times: 2, booked: 2 },
      { times: 5, booked: 1 },
      { times: 1, booked: 0 },
    ],
  },
  taken: [
    { mark: 'CCY', count: 5 },
    { mark: 'CER', count: 1 },
  ],
  bought: [
    { mark: 'CCY', count: 3 },
    { mark: 'CDV', count: 2 },
  ],
  kept: [
    {
      mark: 'CFN',
      length: 508,
      width: 46.83125,
      metal: 'tinplate',
      layout: 0,
      cutting: 2,
    },
  ],
  lacking: [],
  scrapArea: 645.16 * 30,
  scrapGrams: 45,
};

describe('the report of a booking', () => {
  test('tells what was bought to be cut from what came off the rack, and what is left', async () => {
    const { file } = await smallPlan();
    expect(
      bookedReport(file, booked, find).join('\n'),
    ).toBe(`Booked: Spring order (booking 7 of job 3)
Left to book: map 2 x 4, map 3 x 1

Taken off the rack
  Count  Mark  Size           Place
      2  CCY   28 x 20 in
      1  CER   17 1/2 x 6 in  left rack

Bought and cut
  Count  Mark  Size
      3  CCY   28 x 20 in

Bought, and on the rack now
  Count  Mark  Size
      2  CDV   20 x 14 in

Write these marks on what is kept
  Mark  Size             From
  CFN   20 x 1 27/32 in  map 1, cutting 2

Scrap: 1.6 oz (30 sq in)
Sheared edges cut: wear gloves and eye protection.`);
  });

  test('is in the units of the shop, and says what is lacking', async () => {
    const metric = altered('units: in', 'units: mm')
      .replace('smallest mark: 1/32 in', 'smallest mark: 0.5 mm')
      .replaceAll(/(hem|tab|across flats|depth|across): ([\d/]+)( in)?$/gm, '$1: $2 in')
      .replace(/corners: .*/, 'corners: [[0, 0], [90, 0], [90, 60], [45, 90], [0, 60]]');
    const { file } = await smallPlan(metric);
    const none = { ...booked, taken: [], bought: [], kept: [], lacking: ['CCY', 'CER'] };
    const lines = bookedReport(file, none, find);
    expect(lines).toContain('Scrap: 45 g (194 sq cm)');
    expect(lines).toContain('Kept: nothing');
    expect(lines.join(' ').replaceAll('   ', ' ')).toContain(
      'What is left of the plan cannot be cut as planned: CCY, CER are gone, changed or promised to another plan.',
    );
    const { scrapGrams: _, ...weightless } = none;
    expect(bookedReport(file, weightless, find).join('\n')).toContain(
      '194 sq cm; no weight, since the order tells no thickness',
    );
  });
});
