import { accept, type Reading, refuse } from '../faults/reading.js';
import {
  choiceField,
  countField,
  field,
  priceField,
  readCount,
  readYesNo,
  textField,
} from './fields.js';
import { stockSizeField } from './length-fields.js';
import type { OffcutLine, SheetLine } from './order.js';
import type { OrderContext } from './order-context.js';
import { ownMetalFields, readOwnMetal } from './own-metal.js';
import { section } from './sections.js';

/** As many as a planner takes in a pack. */
const LARGEST_PACK = 1000;
export const ROLLED = ['along', 'across'] as const;

/** One entry of `sheets`. */
export function sheetSchema(context: OrderContext) {
  return section({
    name: textField('a name such as Tinplate 20 x 28'),
    size: stockSizeField(context),
    price: priceField('the price of one sheet, 0 if it is free'),
    'on hand': countField(0, 'how many are in the shop').optional(),
    'can buy': field(readStockLimit, { code: 'not a stock limit' }).optional(),
    'sold in packs of': packField().optional(),
    'book value': priceField('what one on hand stands for in the books').optional(),
    rolled: choiceField(ROLLED).optional(),
    ...ownMetalFields(),
  }).transform(
    (read, issues): SheetLine => ({
      name: read.name,
      size: read.size,
      price: read.price,
      onHand: read['on hand'] ?? 0,
      canBuy: read['can buy'] ?? 'any',
      packSize: read['sold in packs of'],
      bookValue: read['book value'],
      rolled: read.rolled,
      own: readOwnMetal(read, context, issues),
    }),
  );
}

/** One entry of `offcuts`. */
export function offcutSchema(context: OrderContext) {
  return section({
    name: textField('a name such as A'),
    size: stockSizeField(context),
    'book value': priceField('what it stands for in the books').optional(),
    rolled: choiceField(ROLLED).optional(),
    ...ownMetalFields(),
  }).transform(
    (read, issues): OffcutLine => ({
      name: read.name,
      size: read.size,
      bookValue: read['book value'],
      rolled: read.rolled,
      own: readOwnMetal(read, context, issues),
    }),
  );
}

const packField = () =>
  field((text) => readCount(text, 1, LARGEST_PACK), { code: 'not a whole number', least: 1 });

/** `yes` for as many as are needed, `no` for none, or how many. */
function readStockLimit(text: string): Reading<number | 'any'> {
  const answer = readYesNo(text);
  if (answer.ok) return accept(answer.value ? 'any' : 0);
  if (/^\d+$/.test(text.trim())) return readCount(text, 0);
  return refuse({ code: 'not a stock limit' });
}
