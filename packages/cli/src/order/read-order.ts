import type { OutlineFamily } from '@stripwright/strip-geometry';
import type { z } from 'zod';
import type { DocumentError, Fault } from '../faults/fault.js';
import type { Drawings } from './drawings.js';
import type { IssueParams } from './fields.js';
import type { TableFile } from './item-table.js';
import { orderContext } from './order-context.js';
import { orderSchema } from './order-schema.js';
import { documentError, orderTree } from './order-tree.js';
import { orderWideFaults } from './order-wide-faults.js';
import { stockFaults } from './stock-faults.js';
import { type SizedOrder, sizeBlanks } from './strips.js';

/**
 * Reads an order and sizes its blanks.
 *
 * @param text the order, YAML 1.2
 * @param file its name, for the messages
 * @param drawings those that it names; see `readDrawings`
 * @param table of its items, where they stand in one; see `readItemTable`
 * @throws DocumentError with every fault of the order, in the order of its lines
 */
export function readOrder(
  text: string,
  file: string,
  families: readonly OutlineFamily[],
  drawings: Drawings = new Map(),
  table?: TableFile,
): SizedOrder {
  const tree = orderTree(text, file, families, table);
  const read = orderSchema(orderContext(tree.value, families, drawings)).safeParse(tree.value);
  const faults = [
    ...tree.faults,
    ...(read.success ? [] : issueFaults(read.error)),
    ...orderWideFaults(tree.value),
  ];
  if (!read.success || faults.length > 0) throw documentError(file, tree.placed(faults));
  const sized = sizeBlanks(read.data);
  const both = { order: read.data, blanks: sized.blanks };
  const late = [...sized.faults, ...stockFaults(both)];
  if (late.length > 0) throw documentError(file, tree.placed(late));
  return both;
}

/**
 * An order that is good by itself and contradicts what lies on the rack.
 * @param text the order, for the lines of the faults
 */
export function contradictedOrder(
  text: string,
  file: string,
  families: readonly OutlineFamily[],
  faults: readonly Fault[],
): DocumentError {
  return documentError(file, orderTree(text, file, families).placed(faults));
}

function issueFaults(error: z.ZodError): readonly Fault[] {
  return error.issues.map((issue): Fault => {
    const path = issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
    const params = issue.code === 'custom' ? (issue.params as IssueParams | undefined) : undefined;
    const complaint = params?.complaint ?? { code: 'schema', reason: issue.message };
    return { complaint, path, ...(params?.found === undefined ? {} : { found: params.found }) };
  });
}
