import {
  type EdgeTreatment,
  edgeTreatments,
  type NamedLength,
  type NamedLengths,
  type Seam,
  seams,
} from '@stripwright/strip-geometry';
import type { FieldFault } from '../faults/fault.js';

/** What a cutter asks for by itself: a name, and lengths. */
export interface Wanted {
  readonly name: string | undefined;
  readonly lengths: NamedLengths;
}

/** An edge or a seam, or which fields it cannot be made from. */
export type Choice<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly faults: readonly FieldFault[] };

export const EDGE_NAMES: readonly string[] = edgeTreatments.map(({ name }) => name);
export const SEAM_NAMES: readonly string[] = seams.map(({ name }) => name);

/** Every length that an edge or a seam is given by. */
export const EDGE_LENGTHS: readonly NamedLength[] = lengthsOf(edgeTreatments);
export const SEAM_LENGTHS: readonly NamedLength[] = lengthsOf(seams);

/**
 * The edge that is asked for, or else the usual one, or else a single hem; a
 * raw edge where the hem is 0. Lengths that a cutter does not give are the usual ones.
 */
export function chooseEdge(wanted: Wanted, usual: Wanted): Choice<EdgeTreatment> {
  return choose(edgeTreatments, HEMMED, wanted, usual);
}

/** The seam, in the same way: a tucked tab, or a butt joint where the tab is 0. */
export function chooseSeam(wanted: Wanted, usual: Wanted): Choice<Seam> {
  return choose(seams, TABBED, wanted, usual);
}

/** A kind of edge or seam. */
interface Kind<Value> {
  readonly name: string;
  readonly sizes: readonly NamedLength[];
  make(lengths: NamedLengths): Value;
}

/** What is made where only a length tells: the plain kind, or none of it where that is 0. */
interface Plain {
  readonly length: string;
  readonly kind: string;
  readonly without: string;
}

const HEMMED: Plain = { length: 'hem', kind: 'single hem', without: 'raw edge' };
const TABBED: Plain = { length: 'tab', kind: 'tucked tab', without: 'butt joint' };

function choose<Value>(
  kinds: readonly Kind<Value>[],
  plain: Plain,
  wanted: Wanted,
  usual: Wanted,
): Choice<Value> {
  const name = wanted.name ?? nameByLength(plain, wanted, usual);
  const kind = kinds.find((one) => one.name === name);
  if (kind === undefined) throw new Error(`There is no "${name}".`);
  const given = Object.entries(wanted.lengths).filter(([, length]) => length !== undefined);
  const lengths = { ...usual.lengths, ...Object.fromEntries(given) };
  const isPlain = kind.name === plain.kind;
  const hint = isPlain ? `it here or under shop, 0 for a ${plain.without}` : undefined;
  const faults = [...sizeFaults(kind, lengths, hint), ...strayFaults(kind, wanted.lengths)];
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: kind.make(lengths) };
}

function nameByLength({ length, kind, without }: Plain, wanted: Wanted, usual: Wanted): string {
  if (wanted.lengths[length] === 0) return without;
  if (usual.name !== undefined) return usual.name;
  const given = wanted.lengths[length] ?? usual.lengths[length];
  return given === 0 ? without : kind;
}

function sizeFaults(
  { name: kind, sizes }: Kind<unknown>,
  lengths: NamedLengths,
  plainHint: string | undefined,
): readonly FieldFault[] {
  return sizes.flatMap(({ name, meaning }): FieldFault[] => {
    const length = lengths[name];
    if (length === undefined) {
      const hint = plainHint ?? `a length: ${meaning}, which a ${kind} needs`;
      return [{ name, complaint: { code: 'missing', hint } }];
    }
    return length > 0 ? [] : [{ name, complaint: { code: 'must be above zero' } }];
  });
}

/** Lengths that were asked for and are of another kind; 0 is none of it and does no harm. */
function strayFaults({ name: kind, sizes }: Kind<unknown>, own: NamedLengths): FieldFault[] {
  const known = sizes.map(({ name }) => name);
  return Object.entries(own)
    .filter(([name, length]) => (length ?? 0) > 0 && !known.includes(name))
    .map(([name]) => ({ name, complaint: { code: 'length of another kind', kind, known } }));
}

function lengthsOf(kinds: readonly Pick<Kind<unknown>, 'sizes'>[]): readonly NamedLength[] {
  const all = kinds.flatMap(({ sizes }) => sizes);
  return [...new Map(all.map((length) => [length.name, length])).values()];
}
