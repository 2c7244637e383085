import type { Outline } from '@stripwright/strip-geometry';
import { z } from 'zod';
import { choiceField, countField, textField, yesNoField } from './fields.js';
import { lengthField } from './length-fields.js';
import { makingFieldsUnread, makingSchema } from './making-schema.js';
import type { CutterItem } from './order.js';
import type { OrderContext } from './order-context.js';
import { forwardIssues, section } from './sections.js';
import { ROLLED } from './stock-schema.js';

/** What every item has. */
export function itemFields() {
  return {
    name: textField('a name for the list of strips'),
    quantity: countField(1, 'how many to make'),
    turn: yesNoField().optional(),
    rolled: choiceField(ROLLED).optional(),
    spares: countField(0, 'how many more are welcome').optional(),
  };
}

/** Where the outlines of a cutter come from. */
export interface OutlineSource {
  /** The field that names it, which is read ahead. */
  readonly field: 'outline' | 'svg';
  /** The family, or the file of the drawing. */
  readonly family: string;
  readonly sizes: Readonly<Record<string, z.ZodType>>;
  /** Draws from the sizes that were read; undefined where it has complained. */
  draw(
    values: Readonly<Record<string, unknown>>,
    issues: z.RefinementCtx,
  ): readonly Outline[] | undefined;
}

/** A cutter: its outlines from a source, its depth, and how it is made. */
export function cutterSchema(context: OrderContext, source: OutlineSource) {
  const fixed = {
    ...itemFields(),
    [source.field]: z.unknown(),
    depth: lengthField(context, 'the height of the finished cutter'),
  };
  // The type keeps the fixed fields; the sizes are told apart by their source.
  const shape = { ...fixed, ...makingFieldsUnread(context), ...source.sizes } as typeof fixed;
  const fields = section(shape);
  const making = makingSchema(context);
  return z.unknown().transform((raw, issues): CutterItem => {
    const read = fields.safeParse(raw);
    const made = making.safeParse(raw);
    for (const { error } of [read, made]) {
      if (error !== undefined) forwardIssues(issues, raw, error);
    }
    if (!read.success || !made.success) return z.NEVER;
    const outlines = source.draw(read.data, issues);
    if (outlines === undefined) return z.NEVER;
    const { name, quantity, turn, rolled, spares, depth } = read.data;
    return {
      kind: 'cutter',
      name,
      quantity,
      mayTurn: turn ?? true,
      rolled,
      spares,
      family: source.family,
      outlines,
      depth,
      ...made.data,
    };
  });
}
