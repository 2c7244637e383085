import bidiFactory from 'bidi-js';

/** A stretch of a line that reads one way. */
export interface Directed {
  readonly text: string;
  readonly rightToLeft: boolean;
}

// Its types tell of an ES module, but what Node loads is the factory itself.
const bidi = (bidiFactory as unknown as typeof bidiFactory.default)();

/** Whether there is any letter or number of a script that reads from the right. */
export const MAY_TURN =
  /[\u0590-\u08FF\u200F\uFB1D-\uFDFF\uFE70-\uFEFF\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

/**
 * A line as its stretches stand from left to right (Unicode Standard Annex 9). The line as a
 * whole reads from left to right, as the page does; brackets are mirrored where they must be.
 */
export function directionsOf(line: string): readonly Directed[] {
  if (!MAY_TURN.test(line)) return line === '' ? [] : [{ text: line, rightToLeft: false }];
  const { levels } = bidi.getEmbeddingLevels(line, 'ltr');
  const mirrored = bidi.getMirroredCharactersMap(line, levels);
  const runs: { text: string; level: number }[] = [];
  // By code units, as the levels are counted; both halves of a pair have one level.
  for (let index = 0; index < line.length; index++) {
    const unit = mirrored.get(index) ?? line.charAt(index);
    const level = levels[index] ?? 0;
    const last = runs.at(-1);
    if (last !== undefined && last.level === level) last.text += unit;
    else runs.push({ text: unit, level });
  }
  return inSight(runs).map(({ text, level }) => ({ text, rightToLeft: level % 2 === 1 }));
}

/** Turns runs round from the deepest level up, rule L2 of the annex, run by run. */
function inSight<T extends { readonly level: number }>(runs: readonly T[]): readonly T[] {
  let order = [...runs];
  const deepest = Math.max(0, ...runs.map(({ level }) => level));
  for (let level = deepest; level > 0; level--) {
    const turned: T[] = [];
    let stretch: T[] = [];
    for (const run of order) {
      if (run.level >= level) {
        stretch.unshift(run);
      } else {
        turned.push(...stretch, run);
        stretch = [];
      }
    }
    order = [...turned, ...stretch];
  }
  return order;
}
