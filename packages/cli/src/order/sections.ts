import { z } from 'zod';
import { nearestSpelling } from '../faults/nearest-spelling.js';
import { complain } from './fields.js';

/**
 * A section of named fields. Fields that it does not know are faults, with the
 * nearest known spelling. This is zod's strict object, with its issues told in
 * terms of an order.
 */
export function section<Shape extends z.ZodRawShape>(
  shape: Shape,
  options: { readonly hint?: string; readonly ignoreUnknown?: boolean } = {},
) {
  const object = options.ignoreUnknown ? z.object(shape) : z.strictObject(shape);
  const known = Object.keys(shape);
  return z.unknown().transform((raw, context): z.output<z.ZodObject<Shape>> => {
    const result = object.safeParse(raw);
    if (result.success) return result.data as z.output<z.ZodObject<Shape>>;
    for (const issue of result.error.issues) {
      if (issue.code === 'unrecognized_keys' && issue.path.length === 0) {
        for (const key of issue.keys) {
          const nearest = nearestSpelling(key, known);
          complain(context, undefined, { code: 'unknown field', known, nearest }, [key]);
        }
      } else if (issue.code === 'invalid_type' && issue.path.length === 0) {
        complainOfKind(context, raw, { code: 'not a section' }, options.hint);
      } else {
        forward(context, raw, issue);
      }
    }
    return z.NEVER;
  });
}

/** A list of at least `least` entries. */
export function list<Entry extends z.ZodType>(entry: Entry, hint: string, least = 0) {
  const array = z.array(entry);
  return z.unknown().transform((raw, context): z.output<Entry>[] => {
    const result = array.safeParse(raw);
    if (!result.success) {
      for (const issue of result.error.issues) {
        if (issue.path.length > 0) forward(context, raw, issue);
        else complainOfKind(context, raw, { code: 'not a list' }, hint);
      }
      return z.NEVER;
    }
    if (result.data.length < least) complain(context, undefined, { code: 'empty list' });
    return result.data;
  });
}

/** Hands the issues of an inner schema on to the outer one. */
export function forwardIssues(context: z.RefinementCtx, raw: unknown, error: z.ZodError): void {
  for (const issue of error.issues) forward(context, raw, issue);
}

function forward(context: z.RefinementCtx, input: unknown, issue: z.core.$ZodIssue): void {
  const params = issue.code === 'custom' ? (issue.params ?? {}) : {};
  context.issues.push({ code: 'custom', input, path: [...issue.path], params });
}

function complainOfKind(
  context: z.RefinementCtx,
  raw: unknown,
  wrong: { readonly code: 'not a list' | 'not a section' },
  hint: string | undefined,
): void {
  const absent = raw === undefined || raw === null || raw === '';
  if (!absent) complain(context, raw, wrong);
  else complain(context, raw, hint === undefined ? { code: 'missing' } : { code: 'missing', hint });
}
