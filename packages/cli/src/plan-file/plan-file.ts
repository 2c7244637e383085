import { z } from 'zod';
import { COARSEST_MARK, FINEST_MARK } from '../order/read-mark.js';
import { count, distance, extent, money, text } from './field-kinds.js';
import { layoutSchema } from './layout-schema.js';
import { metalFields, rackSchema, rolling, stockSchema } from './stock-schema.js';
import { stripSchema } from './strip-schema.js';

// The shape of plan.json, the source of its JSON Schema and of its types.
// Lengths are millimetres, money is decimal.

const orderSchema = z
  .strictObject({
    name: text('The name of the order'),
    units: z.enum(['in', 'mm']).describe('The units that the shop works in.'),
    smallestMark: z
      .number()
      .min(FINEST_MARK)
      .max(COARSEST_MARK)
      .describe('The finest line on the rule, in millimetres; every length is a multiple of it.'),
    metal: z
      .strictObject({
        name: text('The metal, such as tinplate'),
        thickness: extent('Its thickness, absent where the order does not tell it').optional(),
        bendRule: text('The rule that bends are sized by'),
        foodWarning: text(
          'What to say of it where it may not touch every food; absent where it may',
        ).optional(),
      })
      .optional()
      .describe('What the sheets are.'),
    currency: z.string().describe('The sign of the currency; empty where the order gives none.'),
  })
  .describe('The order that was planned.');

const shearSchema = z
  .strictObject({
    firstCut: z
      .enum(['along', 'across', 'either'])
      .describe(
        "Which way the first cuts may run: along the stock's length, across it, or either.",
      ),
    longestCut: extent(
      'The longest cut that the shear makes, absent where it has no limit',
    ).optional(),
    narrowestStrip: distance(
      'The narrowest strip that the shear holds, absent where it has no limit',
    ).optional(),
    kerf: distance('Metal that every cut turns into dust, none where absent').optional(),
    trim: distance('Metal taken off all four edges of a sheet first, none where absent').optional(),
    stages: z
      .union([z.literal(2), z.literal(3), z.literal('free')])
      .optional()
      .describe(
        'How many stages of cuts there are before the last trim, or free for any; 2 where absent.',
      ),
  })
  .describe('The shear that cuts.');

const blankSchema = z
  .strictObject({
    id: text('The name of the item in the order'),
    length: extent('Length, rounded up to a mark'),
    width: extent('Width, rounded up to a mark'),
    quantity: count('How many are wanted', 0),
    mayTurn: z.boolean().describe('Whether it may lie turned by 90 degrees on the stock.'),
    rolling,
    spares: count('Extra copies that are welcome where they cost nothing', 0).optional(),
    ...metalFields,
    strip: stripSchema.optional(),
  })
  .describe('A rectangle to cut, once for each item of the order, in its order.');

const buySchema = z
  .strictObject({
    stock: text('The id of the sheet'),
    count: count('How many to buy', 1),
    cost: money('The price of all of them'),
  })
  .describe('Sheets to buy of one size.');

const keepSchema = z
  .strictObject({
    leastLength: extent('The longer side must be at least so long'),
    leastWidth: extent('The shorter side must be at least so long'),
    worth: money('What a million square marks of it are worth'),
    millions: count('It is worth so much for so many millions instead of one', 1).optional(),
    trouble: money('What the keeping of each costs in trouble; 0 where absent').optional(),
    ...metalFields,
  })
  .describe('Which remnants of one metal are kept, and what they are worth.');

const weightsSchema = z
  .strictObject({
    layout: count('For each different layout', 0).optional(),
    gauge: count("For each change of the shear's gauge", 0).optional(),
    cut: count('For each cut', 0).optional(),
  })
  .describe('How much each kind of trouble counts among plans that cost the same.');

const partsSchema = z
  .strictObject({
    bought: money('Paid for sheets that are bought'),
    fromShop: money('Book value of the sheets on hand and the offcuts that are used'),
    kept: money('Worth of the offcuts that are kept, and of sheets of a pack that are left over'),
  })
  .describe('Where the cost comes from: what is bought and used, less what is kept.');

const spareSchema = z
  .strictObject({
    blank: text('The id of the blank'),
    count: count('Extra copies that are cut', 1),
  })
  .describe('Spares of one blank that found room.');

const boundSchema = z
  .strictObject({
    cost: money('The least that any plan with this kind of cutting can cost'),
    proven: z.boolean().describe("True where the plan's cost equals it: nothing cheaper exists."),
  })
  .describe('How good the plan is.');

const effortSchema = z
  .strictObject({
    rounds: count('Linear masters solved', 0),
    patterns: count('Patterns generated', 0),
    integerMasters: count('Integer masters solved', 0),
    nodes: count('Nodes of branching visited', 0),
    ending: z
      .enum([
        'bound met',
        'all patterns within the gap searched',
        'time limit',
        'called off',
        'pattern limit',
      ])
      .describe('How the bound was reached, or what stopped the search.'),
  })
  .describe('What the planner did, in counts that do not depend on the machine.');

export const SCHEMA_VERSION = 1;

export const planFileSchema = z
  .strictObject({
    schemaVersion: z.literal(SCHEMA_VERSION).describe('The version of this format.'),
    order: orderSchema,
    shear: shearSchema,
    rack: rackSchema.optional(),
    stock: z
      .array(stockSchema)
      .min(1)
      .describe('Every sheet size and offcut of the order, and what was considered of the rack.'),
    blanks: z.array(blankSchema).min(1).describe('Every rectangle to cut.'),
    layouts: z.array(layoutSchema).describe('How to cut, one entry for each cut map.'),
    keep: z
      .array(keepSchema)
      .optional()
      .describe('Which offcuts are kept, a rule for each metal; none where absent.'),
    weights: weightsSchema.optional(),
    buy: z.array(buySchema).describe('What to buy.'),
    spares: z.array(spareSchema).describe('Copies that are cut beyond what is wanted.'),
    cost: money('What the plan costs: what is bought and used from the shop, less what is kept'),
    parts: partsSchema,
    bound: boundSchema,
    effort: effortSchema,
  })
  .describe('A cutting plan: what to buy, how to cut it, and how to bend what is cut.');

/** The contents of plan.json. */
export type PlanFile = z.infer<typeof planFileSchema>;
export type PlanFileStock = PlanFile['stock'][number];
export type PlanFileLayout = PlanFile['layouts'][number];
export type PlanFileBlank = PlanFile['blanks'][number];
export type PlanFileStrip = NonNullable<PlanFileBlank['strip']>;
