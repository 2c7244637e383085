import { z } from 'zod';
import { LONGEST_MILLIMETRES } from '../length/parse-length.js';
import { COARSEST_MARK, FINEST_MARK } from '../order/read-mark.js';

// The shape of plan.json, the source of its JSON Schema and of its types.
// Lengths are millimetres, money is decimal, positions run from the stock's
// lower left corner, x along its length and y along its width.

const text = (meaning: string) => z.string().min(1).describe(`${meaning}.`);
const distance = (meaning: string) =>
  z.number().min(0).max(LONGEST_MILLIMETRES).describe(`${meaning}, in millimetres.`);
const extent = (meaning: string) =>
  z.number().positive().max(LONGEST_MILLIMETRES).describe(`${meaning}, in millimetres.`);
const money = (meaning: string) =>
  z.number().min(0).max(1e12).describe(`${meaning}, in the order's currency, to two decimals.`);
const count = (meaning: string, least: number) =>
  z.int().min(least).max(10_000_000).describe(`${meaning}, a whole number.`);
const degrees = (meaning: string) => z.number().min(0).describe(`${meaning}, in degrees.`);
const direction = z
  .enum(['in', 'out'])
  .describe('Which way: in is toward the inside of the cutter, out is away from it.');

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

const rolling = z
  .enum(['along', 'across'])
  .optional()
  .describe('How the metal is rolled, seen along the length; absent where it is not told.');
const metalFields = {
  metal: text('The name of the metal, absent where all is of one').optional(),
  thickness: z
    .number()
    .positive()
    .max(LONGEST_MILLIMETRES)
    .optional()
    .describe('Thickness of the metal in millimetres, absent where all is of one.'),
};

const rackFields = {
  mark: text(
    'The mark under which it lies on the rack; absent for metal that is not there',
  ).optional(),
  place: text('Where it lay when the plan was made; absent where nobody told').optional(),
};

const stockSchema = z
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

const rackSchema = z
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

const bendSchema = z
  .strictObject({
    number: count('The number of the bend, 1 for the first from the square end', 1),
    at: distance('The middle of the bend from the square end, rounded to the nearest mark'),
    direction,
    angle: degrees('The angle bent through, as drawn: 0 stays flat, 90 is square'),
    foldTo: z
      .number()
      .optional()
      .describe(
        'The angle to bend through on these marks so that the ends meet, in degrees; below 0 the other way.',
      ),
  })
  .describe('One sharp bend.');

const curveSchema = z
  .strictObject({
    from: distance('Where the curve starts, from the square end, rounded to the nearest mark'),
    to: distance('Where it ends, rounded to the nearest mark'),
    radius: extent('The tightest radius, of the face that the outline is the size of'),
    direction,
    angle: degrees('The angle formed through, as drawn'),
    even: z.boolean().optional().describe('Whether it keeps its radius all along.'),
    formTo: z
      .array(z.number())
      .length(2)
      .optional()
      .describe('The angles to form its two halves through on these marks, in degrees.'),
  })
  .describe('A stretch that is formed round a curve.');

const edgeSchema = z
  .strictObject({
    kind: text('What is done to it, such as double hem'),
    foldLines: z
      .array(distance('One fold line, from the raw edge of the flat strip'))
      .describe('The fold lines, from the raw edge on.'),
    face: z
      .enum(['outside', 'inside'])
      .describe('The face of the wall that it is folded to, seen from the cutter.'),
    stage: z
      .enum(['closed', 'square'])
      .optional()
      .describe(
        'How far it is folded while the strip is bent: closed, flat on the wall; square, off it.',
      ),
    wire: distance('Diameter of the wire that it is rolled round; absent without one').optional(),
  })
  .describe('The long edge that is not the cutting edge.');

const seamSchema = z
  .strictObject({
    kind: text('How the ends are joined, such as tucked tab'),
    atStart: distance('What is added at the square end, before the outline starts'),
    atEnd: distance('What is added at the far end'),
    overlap: distance('How far the ends lie on each other'),
    openHem: distance('How much hem stays open at the square end until the tab is in it'),
    lines: z
      .array(
        z
          .strictObject({
            purpose: z.enum(['fold', 'rivets']).describe('What is done along it.'),
            at: distance('From the square end'),
          })
          .describe('A line across the strip.'),
      )
      .describe('Lines across the strip that belong to the seam.'),
  })
  .describe('How the ends are joined.');

const notchSchema = z
  .strictObject({
    bend: count('The number of the bend', 1),
    at: distance('Its point, on the bend mark'),
    depth: distance('From the raw edge to its point'),
    halfAngle: degrees('How far it opens to each side'),
    least: degrees('How far it must open to each side for the hem to clear itself'),
  })
  .describe('A V through the hem at a bend.');

const snipSchema = z
  .strictObject({
    curve: count('The number of the curve, 1 for the first from the square end', 1),
    at: distance('From the square end, rounded to the nearest mark'),
    depth: distance('From the raw edge to its end'),
    halfAngle: degrees('How far it opens to each side; 0 is a slit'),
  })
  .describe('A snip through the hem on a formed curve.');

const refoldSchema = z
  .strictObject({
    closureGap: distance('How far apart the ends are, folded to the told angles'),
    largestDeviation: distance('How far the folded line strays from the drawing at most'),
    drawnClosureGap: distance('How far apart the ends are, folded to the angles as drawn'),
    drawnLargestDeviation: distance('How far the line strays then'),
  })
  .describe('What comes of folding the strip at its rounded marks, by computation.');

const warningSchema = z
  .strictObject({
    kind: text('What it is about, such as notch too narrow'),
    message: text('What is found, and what to do'),
    source: text('Where its limit comes from').optional(),
  })
  .describe('Something to think about before metal is cut.');

const stripSchema = z
  .strictObject({
    outline: text('The kind of outline that the strip is bent to, or the drawing of it'),
    depth: extent('The height of the finished cutter'),
    hem: distance('What the edge adds to the depth: the width of a hem; 0 for a raw edge'),
    tab: distance('What the seam adds at the far end: the length of a tab; 0 for a butt joint'),
    developed: extent('The length once round the cutter without the seam, not rounded'),
    part: z
      .strictObject({
        number: count('Which part it is, 1 for the first', 1),
        of: count('How many parts there are', 1),
      })
      .optional()
      .describe(
        'Where the cutter is made of several strips: each is joined to the next, and the last to the first.',
      ),
    edge: edgeSchema.optional(),
    seam: seamSchema.optional(),
    sizeIs: z
      .enum(['inside', 'outside', 'middle'])
      .optional()
      .describe('What the outline is the size of; the inside where absent.'),
    bends: z.array(bendSchema).describe('The bends, from the square end on.'),
    curves: z.array(curveSchema).describe('The formed curves, from the square end on.'),
    notches: z.array(notchSchema).optional().describe('The notches, one at each bend.'),
    snips: z.array(snipSchema).optional().describe('The relief snips of tight curves.'),
    refold: refoldSchema.optional(),
    warnings: z.array(warningSchema).optional().describe('What is hard to make, or to use.'),
  })
  .describe('How to bend the blank into its cutter; absent for a plain rectangle.');

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

const layoutSchema = z
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
