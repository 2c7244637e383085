import { z } from 'zod';
import { count, degrees, direction, distance, extent, text } from './field-kinds.js';

// What plan.json says of how a blank is bent into its cutter.

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

export const stripSchema = z
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
