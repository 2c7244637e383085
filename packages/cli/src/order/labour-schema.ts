import { readExact } from '../quote/exact.js';
import { field, priceField } from './fields.js';
import type { Labour } from './order.js';
import { section } from './sections.js';

const minutesField = () => field((text) => readExact(text), { code: 'not a number' });

/** The `labour` section of a shop: what an hour of work costs, and how long things take. */
export function labourSchema() {
  return section({
    'hourly rate': priceField('what an hour of work costs'),
    'minutes a cut': minutesField().optional(),
    'minutes a bend': minutesField().optional(),
    'minutes a notch': minutesField().optional(),
    'minutes a seam': minutesField().optional(),
  }).transform(
    (read): Labour => ({
      hourlyRate: read['hourly rate'],
      minutes: {
        cut: read['minutes a cut'],
        bend: read['minutes a bend'],
        notch: read['minutes a notch'],
        seam: read['minutes a seam'],
      },
    }),
  );
}

/** What a shop adds to its costs, in per cent. */
export const marginField = () => field((text) => readExact(text, true), { code: 'not a number' });
