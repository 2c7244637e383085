import { printSize } from '../length/print-length.js';
import { MILLIMETRES, type ShopUnits } from '../length/unit.js';
import { amountOf } from '../money.js';
import { USUAL_MARK } from '../order/read-mark.js';
import type { SheetAnswer } from './sheet-answer.js';

/** What the shop says of itself. */
export interface StarterAnswers {
  readonly units: ShopUnits;
  /** At least one, one of them as large as `LEAST_SHEET`. */
  readonly sheets: readonly SheetAnswer[];
}

/** What one sheet must hold at least, so that all of the starting order can be cut from it. */
export const LEAST_SHEET: Readonly<Record<ShopUnits, string>> = {
  in: '12 x 4 in',
  mm: '300 x 100 mm',
};

/** Sheets for a shop that names none. */
export const USUAL_SHEETS: Readonly<Record<ShopUnits, readonly string[]>> = {
  in: ['28 x 20 in at 7.40', '20 x 14 in at 3.90'],
  mm: ['710 x 510 mm at 7.40', '510 x 355 mm at 3.90'],
};

/** Whether a sheet holds the least one, either way round. */
export function isLargeEnough({ size }: SheetAnswer, units: ShopUnits): boolean {
  const [long = 0, short = 0] = LEAST_SHEET[units]
    .split(' x ')
    .map((side) => Number.parseFloat(side) * MILLIMETRES[units]);
  const { length, width } = size;
  return Math.max(length, width) >= long && Math.min(length, width) >= short;
}

/** An order to start from, in YAML, with a comment wherever there is something to choose. */
export function starterOrder({ units, sheets }: StarterAnswers): string {
  const say = (inches: string, millimetres: string) => (units === 'in' ? inches : millimetres);
  return `# An order of cookie cutters. Change it to yours, then plan it:
#   stripwright plan order.yaml --out packet
# A bare number is in the shop's units; 1 5/8, 1-5/8, 1.625 in and 41.3 mm all work.
name: Bakery co-operative, first order

shop:
  units: ${units} # or: ${say('mm', 'in')}
  smallest mark: ${say('1/32 in', '0.5 mm')} # the finest line on the rule
  # currency: $
  hem: ${say('1/4 in', '6 mm')} # the edge that is folded over; 0 for none
  tab: ${say('1/2 in', '12 mm')} # what joins the ends of a strip; 0 for a butt joint
  shear:
    first cut: either # or: along, across
    # longest cut: ${say('36 in', '900 mm')}
  keep offcuts from: ${say('6 x 1 in', '150 x 25 mm')} # smaller ones are scrap

# The sizes of sheet that can be bought.
sheets:
${namedSheets(units, sheets).join('\n')}

# Pieces left from earlier jobs are used before anything is bought.
# offcuts:
#   - { name: A, size: ${say('17 1/2 x 6 in', '440 x 150 mm')} }

# What to make. "stripwright blank --help" lists every outline with its sizes. A table
# does as well, written by a spreadsheet; see "stripwright plan --help":
# items: items.csv
items:
  - name: Heart
    outline: heart
    across: ${say('3 in', '75 mm')}
    depth: ${say('1 in', '25 mm')} # the height of the finished cutter
    quantity: 12
  - name: Crescent
    outline: crescent
    across: ${say('3 in', '75 mm')}
    thick: ${say('1 1/4 in', '30 mm')}
    depth: ${say('1 in', '25 mm')}
    quantity: 8
  - name: Honeycomb hexagon
    outline: regular polygon
    sides: 6
    across flats: ${say('3 in', '75 mm')}
    depth: ${say('1 in', '25 mm')}
    quantity: 10
  - name: Acorn
    outline: acorn
    high: ${say('2 3/4 in', '70 mm')}
    depth: ${say('3/4 in', '20 mm')}
    quantity: 6
  # A plain rectangle, cut flat, such as a lid.
  - name: Tin lid
    blank: ${say('6 x 3 in', '150 x 75 mm')}
    quantity: 2
`;
}

/** A line for each, with a name of its own even where two are of one size. */
function namedSheets(units: ShopUnits, sheets: readonly SheetAnswer[]): readonly string[] {
  const seen = new Map<string, number>();
  return sheets.map(({ size, sizeText, price }) => {
    const name = `Tinplate ${printSize(size.length, size.width, { units, mark: USUAL_MARK[units] })}`;
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    const own = count === 1 ? name : `${name} (${count})`;
    const written = JSON.stringify(sizeText);
    const plain = /^[\w ./-]+$/.test(sizeText) ? sizeText : written;
    return `  - { name: ${own}, size: ${plain}, price: ${amountOf(price).toFixed(2)} }`;
  });
}
