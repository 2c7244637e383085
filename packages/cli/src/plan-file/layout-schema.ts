import { z } from 'zod';
import { count, distance, extent, money, text } from './field-kinds.js';

// What plan.json says of how stock is cut. Positions run from its lower left
// corner, x along its length and y along its width.

const pieceSchema = z
  .strictObject({
    blank: text('The id of the blank'),
    x: distance('Its left edge'),
    y: distance('Its lower edge'),
    length: extent('Its extent along x, as it lies'),
    width: extent('Its extent along y, as it lies'),
    turned: z.boolean().describe('Whether it lies turned by 90 degrees.'),
  })
  .describe('A blank where it lies on the stock.');

const cutSchema = z
  .strictObject({
    stage: count(
      '0 trims the edges of the stock, 1 shears it into strips, and each later stage cuts square to the one before',
      0,
    ),
    x1: distance('x of one end'),
    y1: distance('y of one end'),
    x2: distance('x of the other end'),
    y2: distance('y of the other end'),
  })
  .describe('One straight cut, from edge to edge of what it divides.');

const remnantSchema = z
  .strictObject({
    x: distance('Its left edge'),
    y: distance('Its lower edge'),
    length: extent('Its extent along x'),
    width: extent('Its extent along y'),
    keep: z.boolean().describe('True for an offcut to keep, false for scrap.'),
    value: money('What it is worth on the rack; 0 for scrap'),
  })
  .describe('A rectangle that is left over.');

export const layoutSchema = z
  .strictObject({
    stock: z
      .strictObject({
        id: text('The id of the stock'),
        kind: z.enum(['sheet', 'offcut']).describe('What kind of stock it is.'),
        length: extent('Length of the stock'),
        width: extent('Width of the stock'),
      })
      .describe('What is cut.'),
    count: count('How many of this stock to cut like this', 1),
    pieces: z.array(pieceSchema).describe('The blanks, as they lie.'),
    cuts: z.array(cutSchema).describe('The cuts, in the order in which they are made.'),
    remnants: z.array(remnantSchema).describe('What is left over.'),
  })
  .describe('One way of cutting one stock.');
