import type { Complaint } from '../faults/fault.js';
import type { Unit } from '../length/unit.js';
import { choiceField, field } from './fields.js';
import {
  HANDWORK_NUMBERS,
  type Handwork,
  type HandworkNumber,
  HEM_STAGES,
  handworkOf,
  readHandworkNumber,
} from './handwork.js';
import { section } from './sections.js';

/** A `handwork` section: how the hem is cut and bent, and the limits of hand and tool. */
export function handworkSchema(units: Unit) {
  const fixed = { 'hem stage': choiceField(HEM_STAGES).optional() };
  const numbers = Object.fromEntries(
    HANDWORK_NUMBERS.map((number) => [
      number.name,
      field((text) => readHandworkNumber(number, text, units), wantedOf(number)).optional(),
    ]),
  );
  // The type keeps the fixed field; the numbers are told apart by their names.
  const shape = { ...fixed, ...numbers } as typeof fixed;
  return section(shape).transform((read): Handwork => {
    const values: Readonly<Record<string, unknown>> = read;
    return handworkOf(read['hem stage'], ({ name }) => {
      const value = values[name];
      return typeof value === 'number' ? value : undefined;
    });
  });
}

function wantedOf({ kind }: HandworkNumber): Complaint {
  return { code: kind === 'length' ? 'not a length' : 'not a number' };
}
