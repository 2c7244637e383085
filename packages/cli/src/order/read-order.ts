import type { OutlineFamily } from '@stripwright/strip-geometry';
import type { z } from 'zod';
import { DocumentError, type Fault, type FieldPath } from '../faults/fault.js';
import { faultText } from '../faults/fault-text.js';
import type { Drawings } from './drawings.js';
import type { IssueParams } from './fields.js';
import { foundText } from './fields.js';
import { fieldOf, orderContext } from './order-context.js';
import { orderSchema } from './order-schema.js';
import { orderWideFaults } from './order-wide-faults.js';
import { stockFaults } from './stock-faults.js';
import { type SizedOrder, sizeBlanks } from './strips.js';
import { parseYaml, type RawValue, type YamlTree } from './yaml-tree.js';

/**
 * Reads an order and sizes its blanks.
 *
 * @param text the order, YAML 1.2
 * @param file its name, for the messages
 * @param drawings those that it names; see `readDrawings`
 * @throws DocumentError with every fault of the order, in the order of its lines
 */
export function readOrder(
  text: string,
  file: string,
  families: readonly OutlineFamily[],
  drawings: Drawings = new Map(),
): SizedOrder {
  const yaml = parseYaml(text);
  if (!yaml.ok) throw orderError(file, yaml.faults);
  const { tree } = yaml;
  const read = orderSchema(orderContext(tree.value, families, drawings)).safeParse(tree.value);
  const faults = [...(read.success ? [] : issueFaults(read.error)), ...orderWideFaults(tree.value)];
  if (!read.success || faults.length > 0) throw orderError(file, placed(faults, tree));
  const sized = sizeBlanks(read.data);
  const both = { order: read.data, blanks: sized.blanks };
  const late = [...sized.faults, ...stockFaults(both)];
  if (late.length > 0) throw orderError(file, placed(late, tree));
  return both;
}

/**
 * An order that is good by itself and contradicts what lies on the rack.
 * @param text the order, for the lines of the faults
 */
export function contradictedOrder(
  text: string,
  file: string,
  faults: readonly Fault[],
): DocumentError {
  const yaml = parseYaml(text);
  return orderError(file, yaml.ok ? placed(faults, yaml.tree) : faults);
}

function orderError(file: string, faults: readonly Fault[]): DocumentError {
  return new DocumentError(file, faults, faults.map((fault) => faultText(file, fault)).join('\n'));
}

function issueFaults(error: z.ZodError): readonly Fault[] {
  return error.issues.map((issue): Fault => {
    const path = issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
    const params = issue.code === 'custom' ? (issue.params as IssueParams | undefined) : undefined;
    const complaint = params?.complaint ?? { code: 'schema', reason: issue.message };
    return { complaint, path, ...(params?.found === undefined ? {} : { found: params.found }) };
  });
}

/** Faults with their lines and with what was found there, in the order of the lines. */
function placed(faults: readonly Fault[], tree: YamlTree): readonly Fault[] {
  return faults
    .map((fault): Fault => {
      const found = fault.found ?? foundText(valueAt(tree.value, fault.path));
      const line = tree.lineOf(fault.path);
      return { ...fault, line, ...(found === undefined ? {} : { found }) };
    })
    .sort((one, other) => (one.line ?? 0) - (other.line ?? 0));
}

function valueAt(raw: RawValue, path: FieldPath): RawValue | undefined {
  return path.reduce<RawValue | undefined>((value, step) => {
    if (typeof step === 'string') return fieldOf(value, step);
    return Array.isArray(value) ? (value[step] as RawValue | undefined) : undefined;
  }, raw);
}
