import {
  type Outline,
  OutlineError,
  type OutlineFamily,
  type Point,
  type SizeKind,
} from '@stripwright/strip-geometry';
import { z } from 'zod';
import { nearestSpelling } from '../faults/nearest-spelling.js';
import { inUnits } from '../length/in-units.js';
import type { Unit } from '../length/unit.js';
import { cutterSchema, itemFields } from './cutter-schema.js';
import { drawingSchema } from './drawing-schema.js';
import { familyMeant, familySpelt } from './family-spelt.js';
import { complain, field } from './fields.js';
import { sizeField } from './length-fields.js';
import type { Item, RectangleItem } from './order.js';
import { fieldOf, type OrderContext } from './order-context.js';
import { forwardIssues, section } from './sections.js';
import { givenSizes, readCorners, readSizeText, wantedOf } from './size-fields.js';
import type { RawValue } from './yaml-tree.js';

/** One entry of `items`: a cutter by its outline, or a plain rectangle. */
export function itemSchema(context: OrderContext) {
  const rectangle = rectangleSchema(context);
  // Made when an item asks for it: an order has few outlines of the many there are.
  const cutters = new Map<OutlineFamily, z.ZodType>();
  const cutterOf = (family: OutlineFamily): z.ZodType => {
    const made = cutters.get(family) ?? familySchema(context, family);
    cutters.set(family, made);
    return made;
  };
  const undecided = section(itemFields(), { ignoreUnknown: true });
  const schemaFor = (raw: RawValue): z.ZodType => {
    if (fieldOf(raw, 'svg') !== undefined) return drawingSchema(context, raw);
    const family = familyMeant(outlineOf(raw), context.families);
    if (family !== undefined) return cutterOf(family);
    return isRectangle(raw) ? rectangle : undecided;
  };
  return z.unknown().transform((raw, issues): Item => {
    const schema = schemaFor(raw as RawValue);
    const result = (schema as z.ZodType<Item>).safeParse(raw);
    if (!result.success) forwardIssues(issues, raw, result.error);
    const isSection = typeof raw === 'object' && !Array.isArray(raw);
    if (isSection && isUndecided(raw as RawValue, context)) {
      complainOfOutline(issues, raw as RawValue, context);
    }
    return result.success ? result.data : z.NEVER;
  });
}

/** Neither a drawing nor a plain rectangle, nor of an outline that is known. */
function isUndecided(raw: RawValue, context: OrderContext): boolean {
  const isDrawing = fieldOf(raw, 'svg') !== undefined;
  return (
    !isDrawing && !isRectangle(raw) && familySpelt(outlineOf(raw), context.families) === undefined
  );
}

function isRectangle(raw: RawValue): boolean {
  return fieldOf(raw, 'blank') !== undefined && fieldOf(raw, 'outline') === undefined;
}

/** The outline of an item as it is written, empty where it is no text. */
function outlineOf(raw: RawValue): string {
  const outline = fieldOf(raw, 'outline');
  return typeof outline === 'string' ? outline : '';
}

/** The fields of which an item has one, which tells what it is. */
const TELLING = ['outline', 'svg', 'blank'];

function complainOfOutline(issues: z.RefinementCtx, raw: RawValue, context: OrderContext): void {
  const outline = fieldOf(raw, 'outline');
  if (outline === undefined || outline === null || outline === '') {
    const hint =
      'the outline of a cutter, svg: with its drawing, or blank: with the size of a plain rectangle';
    complain(issues, undefined, { code: 'missing', hint }, ['outline']);
    const fields = raw as Readonly<Record<string, RawValue>>;
    for (const key of Object.keys(fields).filter((name) => !TELLING.includes(name))) {
      const nearest = nearestSpelling(key, [...TELLING, ...Object.keys(itemFields())]);
      if (nearest === undefined || !TELLING.includes(nearest)) continue;
      complain(issues, undefined, { code: 'unknown field', known: TELLING, nearest }, [key]);
    }
    return;
  }
  const choices = context.families.map(({ name }) => name);
  const nearest = typeof outline === 'string' ? nearestSpelling(outline, choices) : undefined;
  complain(issues, outline, { code: 'not a choice', choices, nearest }, ['outline']);
}

function rectangleSchema(context: OrderContext) {
  return section({
    ...itemFields(),
    blank: sizeField(context, 'a size such as 6 x 4 in'),
  }).transform(
    ({ name, quantity, turn, rolled, spares, blank }): RectangleItem => ({
      kind: 'rectangle',
      name,
      quantity,
      mayTurn: turn ?? true,
      rolled,
      spares,
      size: blank,
    }),
  );
}

/** The fields of a cutter follow from its family, so a new family needs no change here. */
function familySchema(context: OrderContext, family: OutlineFamily) {
  return cutterSchema(context, {
    field: 'outline',
    family: family.name,
    sizes: sizeSchemas(context, family),
    draw: (values, issues) => drawn(family, values, issues, context.rule.units),
  });
}

function drawn(
  family: OutlineFamily,
  values: Readonly<Record<string, unknown>>,
  issues: z.RefinementCtx,
  units: Unit,
): readonly Outline[] | undefined {
  try {
    return [family.draw(givenSizes(family.sizes, values))];
  } catch (error) {
    if (!(error instanceof OutlineError)) throw error;
    const reason = inUnits(error.message, units);
    const complaint = { code: 'outline', reason } as const;
    complain(issues, undefined, complaint, [error.field ?? 'outline']);
    return undefined;
  }
}

/** What is missing where a size is. */
const NOUNS: Readonly<Record<SizeKind, string>> = {
  length: 'a length',
  count: 'a whole number',
  angle: 'degrees',
  ratio: 'a number',
  corners: 'a list of corners',
  letter: 'a letter',
};

function sizeSchemas({ rule }: OrderContext, { sizes }: OutlineFamily): Record<string, z.ZodType> {
  const schemas: Record<string, z.ZodType> = {};
  for (const { name, kind, required, meaning } of sizes) {
    const hint = `${NOUNS[kind]}: ${meaning}`;
    const schema: z.ZodType =
      kind === 'corners'
        ? cornersField(rule.units, hint)
        : field((text) => readSizeText(kind, text, rule.units), wantedOf(kind), hint);
    schemas[name] = required ? schema : schema.optional();
  }
  return schemas;
}

function cornersField(units: Unit, hint: string) {
  return z.unknown().transform((raw, issues): readonly Point[] => {
    if (raw === undefined || raw === null || raw === '') {
      complain(issues, raw, { code: 'missing', hint });
      return z.NEVER;
    }
    const corners = readCorners(raw, units);
    if (corners.ok) return corners.value;
    complain(issues, raw, corners.complaint);
    return z.NEVER;
  });
}
