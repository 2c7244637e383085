import {
  type CutterWithoutOutline,
  largestOfFamily,
  largestThatFits,
  type Outline,
  type OutlineFamily,
  type OutlineSizes,
  scaled,
} from '@stripwright/strip-geometry';
import { printLength, type Rule } from '../length/print-length.js';

/** The stock that the largest size is looked for, and all of the cutter but its outline. */
export interface Fit {
  /** Whole marks, in millimetres. */
  readonly length: number;
  readonly cutter: CutterWithoutOutline;
}

/**
 * The sizes of the largest cutter of a family that the length gives. Lengths
 * that are given tell the shape; where none is, it is that of the family's example.
 *
 * @throws StripError, OutlineError
 */
export function largestSizes(
  family: OutlineFamily,
  sizes: OutlineSizes,
  { cutter, length }: Fit,
): OutlineSizes {
  const shape = family.sizes.some(({ name, kind }) => isLong(kind) && sizes[name] !== undefined)
    ? sizes
    : { ...sizes, ...exampleLengths(family) };
  return largestOfFamily(family, shape, cutter, length).sizes;
}

function isLong(kind: string): boolean {
  return kind === 'length' || kind === 'corners';
}

function exampleLengths({ sizes, example }: OutlineFamily): OutlineSizes {
  const lengths = sizes.filter(({ name, kind }) => isLong(kind) && example[name] !== undefined);
  return Object.fromEntries(lengths.map(({ name }) => [name, example[name]]));
}

/**
 * The outlines of a drawing, all enlarged alike so that each strip comes out of
 * the length and one of them uses it up.
 *
 * @throws StripError, OutlineError
 */
export function largestDrawing(
  outlines: readonly Outline[],
  { cutter, length }: Fit,
): readonly Outline[] {
  const scales = outlines.map((outline) => largestThatFits(outline, cutter, length).scale);
  const scale = Math.min(...scales);
  return outlines.map((outline) => scaled(outline, scale));
}

/** `across 5.3814 in`, as found; sizes that are no lengths as they were given. */
export function sizesText(
  { sizes: fields }: OutlineFamily,
  sizes: OutlineSizes,
  rule: Rule,
): readonly string[] {
  return fields.flatMap(({ name, kind }) => {
    const value = sizes[name];
    if (value === undefined || typeof value === 'object') return [];
    const text = kind === 'length' && typeof value === 'number' ? printLength(value, rule) : value;
    return [`${name} ${text}`];
  });
}
