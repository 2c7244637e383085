import { refuse } from '../faults/reading.js';
import { parseLength, parsePositiveLength } from '../length/parse-length.js';
import { parseSize } from '../length/parse-size.js';
import { printSize } from '../length/print-length.js';
import { ticksDown } from '../length/ticks.js';
import { field } from './fields.js';
import type { OrderContext } from './order-context.js';
import { readMark } from './read-mark.js';

/** A length above 0. */
export const lengthField = ({ rule }: OrderContext, hint = 'a length such as 1 5/8 in') =>
  field((text) => parsePositiveLength(text, rule.units), { code: 'not a length' }, hint);

/** A length of 0 or more. */
export const lengthOrNoneField = ({ rule }: OrderContext, hint = 'a length, 0 for none') =>
  field((text) => parseLength(text, rule.units), { code: 'not a length' }, hint);

/** The two sides of a rectangle, both above 0. */
export const sizeField = ({ rule }: OrderContext, hint: string) =>
  field((text) => parseSize(text, rule.units), { code: 'not a size' }, hint);

/** The size of a sheet or an offcut, of which at least one whole mark is left when rounded down. */
export const stockSizeField = ({ rule }: OrderContext) =>
  field(
    (text) => {
      const size = parseSize(text, rule.units);
      if (!size.ok) return size;
      const shorter = Math.min(size.value.length, size.value.width);
      if (ticksDown(shorter, rule.mark) < 1) {
        return refuse({ code: 'too small', limit: printSize(rule.mark, rule.mark, rule) });
      }
      return size;
    },
    { code: 'not a size' },
    'a length and a width such as 28 x 20 in',
  );

/** The finest line on the shop's rule. */
export const markField = ({ rule }: OrderContext) =>
  field((text) => readMark(text, rule.units), { code: 'not a length' });
