import { BendError, type BendRule, neutralAxis, zeroThickness } from '@stripwright/strip-geometry';
import { z } from 'zod';
import { SHOP_UNITS } from '../length/unit.js';
import { choiceField, complain, field, readNumber, readText } from './fields.js';
import { lengthField, lengthOrNoneField, markField, sizeField } from './length-fields.js';
import type { Shop } from './order.js';
import type { OrderContext } from './order-context.js';
import { section } from './sections.js';

export const BEND_RULES = ['zero thickness', 'neutral axis'] as const;
export const FIRST_CUTS = ['along', 'across', 'either'] as const;

/** The `shop` section: units, marks, metal, edges and the shear. */
export function shopSchema(context: OrderContext) {
  const fields = section(
    {
      units: choiceField(SHOP_UNITS),
      'smallest mark': markField(context).optional(),
      currency: field(readText, { code: 'not text' }).optional(),
      'bend rule': choiceField(BEND_RULES).optional(),
      thickness: lengthField(context).optional(),
      'inside radius': lengthOrNoneField(context).optional(),
      'neutral axis factor': field(readNumber, { code: 'not a number' }).optional(),
      // Read with the cutters that use them; here they are only checked.
      hem: lengthOrNoneField(context).optional(),
      tab: lengthOrNoneField(context).optional(),
      shear: section({
        'longest cut': lengthField(context).optional(),
        'first cut': choiceField(FIRST_CUTS).optional(),
      }).optional(),
      'keep offcuts from': sizeField(context, 'a size such as 6 x 1 in').optional(),
    },
    { hint: 'a shop section with at least its units' },
  );
  return fields.transform((read, issues): Shop => {
    const bendRule = bendRuleOf(read, issues);
    if (bendRule === undefined) return z.NEVER;
    return {
      rule: context.rule,
      currency: read.currency ?? '',
      bendRule,
      shear: {
        firstCut: read.shear?.['first cut'] ?? 'either',
        longestCut: read.shear?.['longest cut'],
      },
      keepFrom: read['keep offcuts from'],
    };
  });
}

interface BendFields {
  readonly 'bend rule'?: (typeof BEND_RULES)[number] | undefined;
  readonly thickness?: number | undefined;
  readonly 'inside radius'?: number | undefined;
  readonly 'neutral axis factor'?: number | undefined;
}

/** What the neutral axis rule cannot do without, and how to say so. */
export const NEUTRAL_AXIS_NEEDS = {
  thickness: 'the thickness of the metal, which the neutral axis rule needs',
  'inside radius': 'the radius inside a sharp bend, which the neutral axis rule needs',
  'neutral axis factor': 'a factor such as 0.44, which the neutral axis rule needs',
} as const;

function bendRuleOf(read: BendFields, issues: z.RefinementCtx): BendRule | undefined {
  if ((read['bend rule'] ?? 'zero thickness') === 'zero thickness') return zeroThickness();
  const { thickness, 'inside radius': insideRadius, 'neutral axis factor': factor } = read;
  for (const [name, hint] of Object.entries(NEUTRAL_AXIS_NEEDS)) {
    if (read[name as keyof BendFields] === undefined) {
      complain(issues, undefined, { code: 'missing', hint }, [name]);
    }
  }
  if (thickness === undefined || insideRadius === undefined || factor === undefined) {
    return undefined;
  }
  try {
    return neutralAxis({ thickness, insideRadius, factor });
  } catch (error) {
    if (!(error instanceof BendError)) throw error;
    complain(issues, undefined, { code: 'strip', reason: error.message }, ['bend rule']);
    return undefined;
  }
}
