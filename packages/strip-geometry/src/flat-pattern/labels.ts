import type { Point } from '../outline.js';
import { point } from '../point.js';
import type { Strip } from '../strip.js';
import type { PatternBend } from './flat-pattern.js';

/** A word or number on the pattern, and the point that it belongs to. */
export interface PatternLabel {
  readonly about:
    | 'square end'
    | 'bend'
    | 'curve'
    | 'seam'
    | 'open hem'
    | 'hemmed edge'
    | 'cutting edge';
  readonly text: string;
  /** Inside the blank. */
  readonly at: Point;
}

/** The labels of a pattern: bends by number, curves, the seam, the open hem, and which edge is which. */
export function labelsOf(
  { length, width, edge, seam, curves }: Strip,
  bends: readonly PatternBend[],
  openHem: { readonly from: number; readonly to: number } | undefined,
): readonly PatternLabel[] {
  const wall = (edge.notchDepth + width) / 2;
  const middle = (from: number, to: number) => (from + to) / 2;
  const labels: PatternLabel[] = [
    { about: 'square end', text: 'square end', at: point(0, wall) },
    ...bends.map(({ number, at }): PatternLabel => {
      return { about: 'bend', text: String(number), at: point(at, wall) };
    }),
    ...curves.map(({ from, to, direction }): PatternLabel => {
      return { about: 'curve', text: `form ${direction}`, at: point(middle(from, to), wall) };
    }),
    { about: 'hemmed edge', text: edge.name, at: point(length / 2, edge.notchDepth / 2) },
    { about: 'cutting edge', text: 'cutting edge', at: point(length / 2, width) },
  ];
  if (seam.atEnd > 0) {
    labels.push({ about: 'seam', text: seam.name, at: point(length - seam.atEnd / 2, wall) });
  }
  if (openHem !== undefined) {
    const at = point(middle(openHem.from, openHem.to), edge.notchDepth / 2);
    labels.push({ about: 'open hem', text: 'leave open', at });
  }
  return labels;
}
