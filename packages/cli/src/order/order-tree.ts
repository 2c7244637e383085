import type { OutlineFamily } from '@stripwright/strip-geometry';
import { type Complaint, DocumentError, type Fault, type FieldPath } from '../faults/fault.js';
import { faultText } from '../faults/fault-text.js';
import { foundText } from './fields.js';
import { readTableItems, type TableFile, type TableItems } from './item-table.js';
import { fieldOf } from './order-context.js';
import { parseYaml, type RawValue, type YamlTree } from './yaml-tree.js';

/** An order as written, its items in it or in a table, before anything is made of it. */
export interface OrderTree {
  readonly value: RawValue;
  /** What is wrong with the table, and with that alone. */
  readonly faults: readonly Fault[];
  /** Faults with their places and with what was found there, in the order of the text. */
  placed(faults: readonly Fault[]): readonly Fault[];
}

/** Fields that every row lacks where their column is lacking, told once. */
const SAID_ONCE: readonly FieldPath[number][] = ['name', 'quantity', 'depth', 'outline'];

/**
 * Reads the text of an order, and the table of its items where it names one.
 * @param file its name, for the messages
 * @throws DocumentError where it is no YAML
 */
export function orderTree(
  text: string,
  file: string,
  families: readonly OutlineFamily[],
  table?: TableFile,
): OrderTree {
  const yaml = parseYaml(text);
  if (!yaml.ok) throw documentError(file, yaml.faults);
  if (table === undefined) return plainTree(yaml.tree);
  if (!table.text.ok) return withoutItems(yaml.tree, unreadable(table, table.text.complaint));
  const items = readTableItems(table.text.value, table.file, families);
  if ('complaint' in items) {
    const fault: Fault = { complaint: items.complaint, path: [], cell: { file: table.file } };
    return withoutItems(yaml.tree, fault);
  }
  return withTable(yaml.tree, items);
}

/** In the line of the order that names it, where one does. */
function unreadable({ file, isOfOrder = false }: TableFile, complaint: Complaint): Fault {
  if (!isOfOrder) return { complaint, path: [], cell: { file } };
  const reason = complaint.code === 'unreadable' ? complaint.reason : '';
  return { complaint: { code: 'unreadable table', reason }, path: ['items'] };
}

export function documentError(file: string, faults: readonly Fault[]): DocumentError {
  return new DocumentError(file, faults, faults.map((fault) => faultText(file, fault)).join('\n'));
}

function plainTree(tree: YamlTree): OrderTree {
  return {
    value: tree.value,
    faults: [],
    placed: (faults) => inOrder(faults.map((fault) => onItsLine(fault, tree))),
  };
}

/** The order with a table that cannot be read: the rest of it can still be checked. */
function withoutItems(tree: YamlTree, fault: Fault): OrderTree {
  return {
    value: withItems(tree.value, []),
    faults: [fault],
    placed: (faults) =>
      inOrder(
        faults
          .filter((one) => one === fault || one.path[0] !== 'items')
          .map((one) => (one.cell === undefined ? onItsLine(one, tree) : one)),
      ),
  };
}

function withTable(tree: YamlTree, table: TableItems): OrderTree {
  const value = withItems(tree.value, table.items);
  return {
    value,
    faults: table.faults,
    placed(faults) {
      const said = new Set<unknown>();
      const all = faults.flatMap((fault): readonly Fault[] => {
        if (fault.cell !== undefined) return [fault];
        if (fault.path[0] !== 'items') return [onItsLine(fault, tree)];
        const field = fault.path[2];
        const isOnce =
          fault.complaint.code === 'missing' &&
          SAID_ONCE.includes(field ?? '') &&
          table.lacks(String(field));
        if (!isOnce) return [inItsCell(fault, value, table)];
        if (said.has(field)) return [];
        said.add(field);
        return [{ complaint: fault.complaint, path: [field ?? ''], cell: table.head }];
      });
      return inOrder(all);
    },
  };
}

function withItems(value: RawValue, items: RawValue): RawValue {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return { ...value, items };
}

function onItsLine(fault: Fault, tree: YamlTree): Fault {
  return withFound({ ...fault, line: tree.lineOf(fault.path) }, tree.value, fault.path);
}

function inItsCell(fault: Fault, value: RawValue, table: TableItems): Fault {
  const place = table.place(fault.path.slice(1));
  const { complaint } = fault;
  const first = complaint.code === 'duplicate name' ? complaint.first : [];
  const other = first.length === 0 ? undefined : table.place(first.slice(1)).cell;
  const said = other && {
    complaint: { ...complaint, first: [`row ${other.row}`] } as typeof complaint,
  };
  return withFound({ ...fault, ...said, ...place }, value, fault.path);
}

function withFound(fault: Fault, value: RawValue, path: FieldPath): Fault {
  const found = fault.found ?? foundText(valueAt(value, path));
  return found === undefined ? fault : { ...fault, found };
}

function valueAt(raw: RawValue, path: FieldPath): RawValue | undefined {
  return path.reduce<RawValue | undefined>((value, step) => {
    if (typeof step === 'string') return fieldOf(value, step);
    return Array.isArray(value) ? (value[step] as RawValue | undefined) : undefined;
  }, raw);
}

/** Those of the order by their lines, then those of its table by their rows. */
function inOrder(faults: readonly Fault[]): readonly Fault[] {
  const key = ({ line, cell }: Fault) => [
    cell === undefined ? 0 : 1,
    cell === undefined ? (line ?? 0) : (cell.row ?? 0),
  ];
  return [...faults].sort((one, other) => {
    const [oneKind = 0, oneAt = 0] = key(one);
    const [otherKind = 0, otherAt = 0] = key(other);
    return oneKind - otherKind || oneAt - otherAt;
  });
}
