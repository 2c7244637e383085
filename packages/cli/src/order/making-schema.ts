import { z } from 'zod';
import {
  chooseEdge,
  chooseSeam,
  EDGE_LENGTHS,
  EDGE_NAMES,
  SEAM_LENGTHS,
  SEAM_NAMES,
} from './edge-and-seam.js';
import { HEM_FACES, SIZE_FACES } from './faces.js';
import { choiceField, complain, field, readAngle } from './fields.js';
import { handworkSchema } from './handwork-schema.js';
import { lengthOrNoneField } from './length-fields.js';
import type { Making } from './order.js';
import type { OrderContext } from './order-context.js';
import { readSeamPlace } from './seam-place.js';
import { section } from './sections.js';

/** The edge and the seam, each with the lengths that some kind of it needs, and the handwork. */
export function edgeAndSeamFields(context: OrderContext) {
  const lengths = (all: readonly { readonly name: string }[]) =>
    Object.fromEntries(all.map(({ name }) => [name, lengthOrNoneField(context).optional()]));
  return {
    edge: choiceField(EDGE_NAMES).optional(),
    ...lengths(EDGE_LENGTHS),
    'hem face': choiceField(HEM_FACES).optional(),
    seam: choiceField(SEAM_NAMES).optional(),
    ...lengths(SEAM_LENGTHS),
    handwork: handworkSchema(context.rule.units).optional(),
  };
}

function makingFields(context: OrderContext) {
  return {
    ...edgeAndSeamFields(context),
    'seam at': field((text) => readSeamPlace(text, context.rule.units), {
      code: 'not a seam place',
    }).optional(),
    'size is': choiceField(SIZE_FACES).optional(),
    'corner angle': field(readAngle, { code: 'not a number' }).optional(),
  };
}

/** Those fields as another section has them that leaves them to `makingSchema`. */
export function makingFieldsUnread(context: OrderContext): Record<string, z.ZodType> {
  return Object.fromEntries(
    Object.keys(makingFields(context)).map((name) => [name, z.unknown().optional()]),
  );
}

/** Reads how a cutter is made from among its other fields, the shop's ways where it says nothing. */
export function makingSchema(context: OrderContext) {
  return section(makingFields(context), { ignoreUnknown: true }).transform(
    (read, issues): Making => {
      const values = read as Readonly<Record<string, unknown>>;
      const given = (all: readonly { readonly name: string }[]) =>
        Object.fromEntries(all.map(({ name }) => [name, values[name] as number | undefined]));
      const edge = chooseEdge({ name: read.edge, lengths: given(EDGE_LENGTHS) }, context.shopEdge);
      const seam = chooseSeam({ name: read.seam, lengths: given(SEAM_LENGTHS) }, context.shopSeam);
      for (const { name, complaint } of [edge, seam].flatMap((one) => (one.ok ? [] : one.faults))) {
        complain(issues, undefined, complaint, [name]);
      }
      if (!edge.ok || !seam.ok) return z.NEVER;
      return {
        edge: edge.value,
        hemFace: read['hem face'] ?? context.shopHemFace,
        seam: seam.value,
        seamAt: read['seam at'],
        sizeIs: read['size is'] ?? context.shopSizeIs,
        cornerAngle: read['corner angle'],
        handwork: { ...context.shopHandwork, ...read.handwork },
      };
    },
  );
}
