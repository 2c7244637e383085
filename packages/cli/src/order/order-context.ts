import type {
  HemFace,
  Metal,
  NamedLength,
  OutlineFamily,
  SizeFace,
} from '@stripwright/strip-geometry';
import { parseLength } from '../length/parse-length.js';
import type { Rule } from '../length/print-length.js';
import type { Drawings } from './drawings.js';
import {
  EDGE_LENGTHS,
  EDGE_NAMES,
  SEAM_LENGTHS,
  SEAM_NAMES,
  type Wanted,
} from './edge-and-seam.js';
import { HEM_FACES, SIZE_FACES } from './faces.js';
import { readChoice } from './fields.js';
import type { Handwork } from './handwork.js';
import { handworkSchema } from './handwork-schema.js';
import { readMark, USUAL_MARK } from './read-mark.js';
import { metalSpelt } from './thickness.js';
import type { RawValue } from './yaml-tree.js';

/** What the fields of an order need to know of its shop before they can be read. */
export interface OrderContext {
  readonly rule: Rule;
  readonly families: readonly OutlineFamily[];
  readonly drawings: Drawings;
  /** What the thickness is read for. */
  readonly metal: Metal;
  /** The edge and seam of cutters that name none of their own, as far as the shop gives any. */
  readonly shopEdge: Wanted;
  readonly shopSeam: Wanted;
  readonly shopHemFace: HemFace;
  readonly shopSizeIs: SizeFace;
  readonly shopHandwork: Handwork;
}

/**
 * Looks ahead at the shop's units, mark and metal, with the usual ones in place of
 * what cannot be read: the schema reports that, and the rest of the order can
 * still be checked.
 */
export function orderContext(
  raw: RawValue,
  families: readonly OutlineFamily[],
  drawings: Drawings = new Map(),
): OrderContext {
  const shop = fieldOf(raw, 'shop');
  const units = fieldOf(shop, 'units') === 'mm' ? 'mm' : 'in';
  const written = fieldOf(shop, 'smallest mark');
  const metal = fieldOf(shop, 'metal');
  const mark = typeof written === 'string' ? readMark(written, units) : undefined;
  return {
    rule: { units, mark: mark?.ok ? mark.value : USUAL_MARK[units] },
    families,
    drawings,
    metal: metalSpelt(typeof metal === 'string' ? metal : undefined),
    shopEdge: shopChoice(shop, 'edge', EDGE_NAMES, EDGE_LENGTHS, units),
    shopSeam: shopChoice(shop, 'seam', SEAM_NAMES, SEAM_LENGTHS, units),
    shopHemFace: chosen(fieldOf(shop, 'hem face'), HEM_FACES) ?? 'outside',
    shopSizeIs: chosen(fieldOf(shop, 'size is'), SIZE_FACES) ?? 'inside',
    shopHandwork: shopHandwork(fieldOf(shop, 'handwork'), units),
  };
}

function shopChoice(
  shop: RawValue | undefined,
  field: string,
  names: readonly string[],
  lengths: readonly NamedLength[],
  units: Rule['units'],
): Wanted {
  return {
    name: chosen(fieldOf(shop, field), names),
    lengths: Object.fromEntries(lengths.map(({ name }) => [name, shopLength(shop, name, units)])),
  };
}

function chosen<T extends string>(raw: RawValue | undefined, choices: readonly T[]): T | undefined {
  const choice = typeof raw === 'string' ? readChoice(raw, choices) : undefined;
  return choice?.ok ? choice.value : undefined;
}

function shopHandwork(raw: RawValue | undefined, units: Rule['units']): Handwork {
  const read = handworkSchema(units).safeParse(raw);
  return read.success ? read.data : {};
}

/** A length of the shop: undefined where it is not given, any length where it cannot be read. */
function shopLength(shop: RawValue | undefined, name: string, units: Rule['units']) {
  const raw = fieldOf(shop, name);
  if (raw === undefined) return undefined;
  const length = typeof raw === 'string' ? parseLength(raw, units) : undefined;
  return length?.ok ? length.value : 1;
}

/** The value of a section's field, if it is a section and has it. */
export function fieldOf(raw: RawValue | undefined, name: string): RawValue | undefined {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return undefined;
  const fields = raw as { readonly [field: string]: RawValue | undefined };
  return Object.hasOwn(fields, name) ? fields[name] : undefined;
}
