import { other } from '../pattern/cut-up.js';
import type { Rolling } from '../problem.js';
import { Enumeration, type EnumerationRequest } from './enumeration.js';
import type { Frontier } from './frontier.js';
import type { Yield } from './yield.js';

/**
 * What a box can yield by cuts in so many stages and a last trim, the first cuts
 * running `runs`. What holds pieces is parted off first: in which order slices come
 * makes no difference to what the shear can cut, and scrap behind them is in one piece.
 */
export function yieldsInStages(
  request: EnumerationRequest,
  runs: Rolling,
  stages: number,
): readonly Yield[] {
  const enumeration = new Enumeration(request);
  const within = (length: number, width: number, runs: Rolling, left: number): readonly Yield[] =>
    enumeration.once(`${length} x ${width} ${runs} ${left}`, length, width, (frontier) => {
      if (left === 0) {
        enumeration.exact(frontier, length, width);
        enumeration.trimmed(frontier, length, width, runs);
      } else divide(frontier, length, width, runs, left);
    });

  function divide(
    frontier: Frontier,
    length: number,
    width: number,
    runs: Rolling,
    left: number,
  ): void {
    const level = runs === 'along';
    const breadth = level ? width : length;
    const holding = (extent: number) =>
      (level
        ? within(length, extent, other(runs), left - 1)
        : within(extent, width, other(runs), left - 1)
      ).filter(({ pieces }) => pieces > 0);
    enumeration.both(frontier, { runs, breadth, extent: breadth }, holding(breadth), undefined);
    for (const { near, far } of enumeration.divisions(length, width, runs)) {
      const first = holding(near);
      if (first.length === 0) continue;
      const rest = level
        ? () => within(length, far, runs, left)
        : () => within(far, width, runs, left);
      const cut = { runs, breadth, extent: near };
      enumeration.both(frontier, cut, first, far === 0 ? undefined : rest());
    }
  }

  const { length, width } = request.box;
  return within(length, width, runs, stages);
}
