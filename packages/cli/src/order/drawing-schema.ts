import type { Outline } from '@stripwright/strip-geometry';
import type { z } from 'zod';
import { cutterSchema, type OutlineSource } from './cutter-schema.js';
import { complain } from './fields.js';
import { lengthField } from './length-fields.js';
import type { OrderContext } from './order-context.js';
import { fieldOf } from './order-context.js';
import { svgOutlines } from './svg-outlines.js';
import type { RawValue } from './yaml-tree.js';

/** Sizes that an item may give for its drawing. */
const SIZES = ['across', 'high', 'tolerance'] as const;

/** A cutter by a drawing in SVG; one blank for each of its outlines. */
export function drawingSchema(context: OrderContext, raw: RawValue) {
  const written = fieldOf(raw, 'svg');
  const file = typeof written === 'string' ? written.trim() : '';
  const source: OutlineSource = {
    field: 'svg',
    family: file,
    sizes: Object.fromEntries(SIZES.map((name) => [name, lengthField(context).optional()])),
    draw(values, issues): readonly Outline[] | undefined {
      const text = context.drawings.get(file);
      if (text === undefined) {
        complain(issues, written, { code: 'not a drawing' }, ['svg']);
        return undefined;
      }
      const sizes = SIZES.filter((name) => values[name] !== undefined).map((name) => [
        name,
        values[name],
      ]);
      const read = text.ok ? svgOutlines(text.value, file, Object.fromEntries(sizes)) : text;
      if (read.ok) return read.value;
      complain(issues, written, read.complaint, ['svg']);
      return undefined;
    },
  };
  return cutterSchema(context, source) as z.ZodType;
}
