import { accept, type Reading, refuse } from '../faults/reading.js';
import { parseSize, type Size } from '../length/parse-size.js';
import type { ShopUnits } from '../length/unit.js';
import { type Coins, parsePrice } from '../money.js';
import { decimalPoint } from '../spreadsheet/decimal-point.js';

/** A sheet as its buyer says it: `28 x 20 in at 7.40`. */
export interface SheetAnswer {
  readonly size: Size;
  /** As it was said, on one line. */
  readonly sizeText: string;
  readonly price: Coins;
}

/** Longer is no size that anyone says. */
const LONGEST = 80;

/** Reads a size and a price with `at` between them. Commas may be decimal. */
export function readSheetAnswer(text: string, units: ShopUnits): Reading<SheetAnswer> {
  const line = decimalPoint(text.trim().replaceAll(/\s+/g, ' '), ';');
  const [, sizeText, priceText] = /^(.+?) (?:at|@) (.+)$/i.exec(line) ?? [];
  if (sizeText === undefined || priceText === undefined || line.length > LONGEST) {
    return refuse({ code: 'not a priced sheet' });
  }
  const size = parseSize(sizeText, units);
  if (!size.ok) return size;
  const price = parsePrice(priceText);
  return price.ok ? accept({ size: size.value, sizeText, price: price.value }) : price;
}
