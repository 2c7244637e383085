import { z } from 'zod';
import { LONGEST_MILLIMETRES } from '../length/parse-length.js';
import { count, extent, money, text } from './field-kinds.js';

// What plan.json says of stock, and of the rack that it came from.

export const rolling = z
  .enum(['along', 'across'])
  .optional()
  .describe('How the metal is rolled, seen along the length; absent where it is not told.');
export const metalFields = {
  metal: text('The name of the metal, absent where all is of one').optional(),
  thickness: z
    .number()
    .positive()
    .max(LONGEST_MILLIMETRES)
    .optional()
    .describe('Thickness of the metal in millimetres, absent where all is of one.'),
};

export const rackFields = {
  mark: text(
    'The mark under which it lies on the rack; absent for metal that is not there',
  ).optional(),
  place: text('Where it lay when the plan was made; absent where nobody told').optional(),
};

export const stockSchema = z
  .discriminatedUnion('kind', [
    z
      .strictObject({
        id: text('The name of the sheet in the order'),
        kind: z.literal('sheet').describe('A size of sheet that is on hand or can be bought.'),
        length: extent('Length, rounded down to a mark'),
        width: extent('Width, rounded down to a mark'),
        price: money('The price of one sheet'),
        onHand: count('Sheets in the shop, used before any are bought', 0),
        canBuy: z
          .union([count('At most so many', 0), z.literal('any')])
          .describe('How many can be bought; any for no limit.'),
        packSize: count('Sheets are sold in packs of so many; 1 where absent', 1).optional(),
        bookValue: money(
          'What a sheet on hand stands for in the books; the worth of a whole one where absent',
        ).optional(),
        rolling,
        ...metalFields,
        ...rackFields,
      })
      .describe('A size of sheet; with a mark, those on hand are those on the rack.'),
    z
      .strictObject({
        id: text('The name of the offcut in the order'),
        kind: z.literal('offcut').describe('One piece left over from an earlier job.'),
        length: extent('Length, rounded down to a mark'),
        width: extent('Width, rounded down to a mark'),
        bookValue: money(
          'What it stands for in the books; what it would be kept for where absent',
        ).optional(),
        rolling,
        ...metalFields,
        ...rackFields,
      })
      .describe('An offcut, used at its book value.'),
  ])
  .describe('What could be cut from.');

export const rackSchema = z
  .strictObject({
    id: text('What tells the rack from all others'),
    revision: count('How often it had been changed by then', 0),
    fitting: count('How many offcuts and sizes of sheet on it could hold a blank', 0),
    considered: count('How many of them the planner was given: the bound holds for these', 0),
    unsureThickness: count(
      'How many would fit, but only one of rack and order tells their thickness',
      0,
    ),
  })
  .describe('The rack that the plan was made from.');
