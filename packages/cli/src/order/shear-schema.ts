import { choiceField } from './fields.js';
import { lengthField, lengthOrNoneField } from './length-fields.js';
import type { Shop } from './order.js';
import type { OrderContext } from './order-context.js';
import { section } from './sections.js';

export const FIRST_CUTS = ['along', 'across', 'either'] as const;
const STAGES = ['two', 'three', 'free'] as const;

/** How the planner counts them. */
const STAGE_COUNTS = { two: 2, three: 3, free: 'free' } as const;

/** The `shear` section of a shop: the machine that cuts. */
export function shearSchema(context: OrderContext) {
  return section({
    'longest cut': lengthField(context).optional(),
    'first cut': choiceField(FIRST_CUTS).optional(),
    'narrowest strip': lengthOrNoneField(context).optional(),
    kerf: lengthOrNoneField(context).optional(),
    'edge trim': lengthOrNoneField(context).optional(),
    stages: choiceField(STAGES).optional(),
  }).transform((read): Shop['shear'] => ({
    firstCut: read['first cut'] ?? 'either',
    longestCut: read['longest cut'],
    narrowestStrip: read['narrowest strip'],
    kerf: read.kerf,
    edgeTrim: read['edge trim'],
    stages: read.stages === undefined ? undefined : STAGE_COUNTS[read.stages],
  }));
}
