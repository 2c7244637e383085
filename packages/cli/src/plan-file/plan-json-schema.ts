import { z } from 'zod';
import { planFileSchema } from './plan-file.js';

/** The JSON Schema (draft 2020-12) of plan.json, as text for plan.schema.json. */
export function planJsonSchema(): string {
  const schema = z.toJSONSchema(planFileSchema, { target: 'draft-2020-12' });
  return `${JSON.stringify({ title: 'Stripwright cutting plan', ...schema }, null, 2)}\n`;
}
