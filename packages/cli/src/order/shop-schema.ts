import { z } from 'zod';
import { SHOP_UNITS } from '../length/unit.js';
import {
  BEND_RULE_NAMES,
  makeBendRule,
  RULE_SIZES,
  type RuleValues,
  readRuleSize,
  USUAL_BEND_RULE,
  wantedOfRule,
} from './bend-rule-sizes.js';
import { SIZE_FACES } from './faces.js';
import { choiceField, complain, field, pathField, priceField, readText } from './fields.js';
import { labourSchema, marginField } from './labour-schema.js';
import { markField, sizeField } from './length-fields.js';
import { edgeAndSeamFields } from './making-schema.js';
import type { Shop } from './order.js';
import type { OrderContext } from './order-context.js';
import { section } from './sections.js';
import { shearSchema } from './shear-schema.js';
import { METAL_NAMES, readThickness } from './thickness.js';

/** The `shop` section: units, marks, metal, edges and the shear. */
export function shopSchema(context: OrderContext) {
  const fixed = {
    units: choiceField(SHOP_UNITS),
    'smallest mark': markField(context).optional(),
    currency: field(readText, { code: 'not text' }).optional(),
    // Read ahead, since the thickness depends on it; here it is only checked.
    metal: choiceField(METAL_NAMES).optional(),
    thickness: field((text) => readThickness(text, context.metal, context.rule.units), {
      code: 'not a thickness',
    }).optional(),
    'bend rule': choiceField(BEND_RULE_NAMES).optional(),
    // Read with the cutters that use them; here they are only checked.
    ...edgeAndSeamFields(context),
    'size is': choiceField(SIZE_FACES).optional(),
    shear: shearSchema(context).optional(),
    'keep offcuts from': sizeField(context, 'a size such as 6 x 1 in').optional(),
    'offcuts worth': priceField('the price of a square foot or metre').optional(),
    'offcut trouble': priceField('a price').optional(),
    labour: labourSchema().optional(),
    margin: marginField().optional(),
    rack: pathField('the file of the rack').optional(),
  };
  // The type keeps the fixed fields; sizes of bend rules are told apart by their names.
  const shape = { ...fixed, ...ruleSizeSchemas(context) } as typeof fixed;
  const fields = section(shape, { hint: 'a shop section with at least its units' });
  return fields.transform((read, issues): Shop => {
    const bendRule = bendRuleOf(read['bend rule'] ?? USUAL_BEND_RULE, read as RuleValues, issues);
    const keepFrom = read['keep offcuts from'];
    if (keepFrom === undefined && isPriced(read)) {
      const hint = 'the least offcut that is worth anything, such as 6 x 1 in';
      complain(issues, undefined, { code: 'missing', hint }, ['keep offcuts from']);
      return z.NEVER;
    }
    if (bendRule === undefined) return z.NEVER;
    return {
      rule: context.rule,
      currency: read.currency ?? '',
      metal: context.metal,
      thickness: read.thickness,
      bendRule,
      shear: read.shear ?? { firstCut: 'either' },
      keepFrom,
      offcutWorth: read['offcuts worth'],
      offcutTrouble: read['offcut trouble'],
      labour: read.labour,
      margin: read.margin,
      rack: read.rack,
    };
  });
}

/** Whether a shop says what its offcuts are worth. */
function isPriced(read: {
  readonly 'offcuts worth'?: number | undefined;
  readonly 'offcut trouble'?: number | undefined;
}): boolean {
  return read['offcuts worth'] !== undefined || read['offcut trouble'] !== undefined;
}

function bendRuleOf(name: string, values: RuleValues, issues: z.RefinementCtx) {
  const made = makeBendRule(name, values);
  if (made.ok) return made.rule;
  for (const { name: field, complaint } of made.faults) {
    complain(issues, undefined, complaint, [field]);
  }
  return undefined;
}

function ruleSizeSchemas({ rule }: OrderContext): Record<string, z.ZodType> {
  return Object.fromEntries(
    RULE_SIZES.map(({ name, field: size }) => [
      name,
      field((text) => readRuleSize(size, text, rule.units), wantedOfRule(size)).optional(),
    ]),
  );
}
