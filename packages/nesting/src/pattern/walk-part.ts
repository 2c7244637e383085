import type { Part } from './part.js';

/** Copies of each piece in a part, as [index of the piece, copies], ascending. */
export function countsOf(part: Part): readonly (readonly [number, number])[] {
  const counts = new Map<number, number>();
  const walk = (at: Part): void => {
    if (at.kind === 'lay') counts.set(at.piece, (counts.get(at.piece) ?? 0) + 1);
    else for (const slice of at.parts) walk(slice.part);
  };
  walk(part);
  return [...counts].sort((a, b) => a[0] - b[0]);
}

/** Two parts are cut alike, but for the order of their slices, exactly where their keys are the same. */
export function partKey(part: Part): string {
  if (part.kind === 'lay') return `${part.piece}${part.turned ? 'x' : ''}`;
  const slices = part.parts.map(({ extent, part: inner }) => `${extent}(${partKey(inner)})`);
  return `${part.cuts === 'along' ? '-' : '|'}${slices.sort().join('')}`;
}

/** The same part seen with length and width exchanged. */
export function transposed(part: Part): Part {
  if (part.kind === 'lay') return { ...part, turned: !part.turned };
  return {
    kind: 'split',
    cuts: part.cuts === 'along' ? 'across' : 'along',
    parts: part.parts.map(({ extent, part: inner }) => ({ extent, part: transposed(inner) })),
  };
}
