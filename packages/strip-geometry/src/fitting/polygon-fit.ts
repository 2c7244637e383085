import type { Line, Outline } from '../outline.js';
import { fewestCorners } from './fewest-corners.js';
import { asFit, type Trace } from './trace.js';

/** Shares of the tolerance that are tried; a tight one where sides of a loose one would cross. */
const SHARES = [0.95, 0.5, 0.2];

/** The polygon with few corners, all on the trace, that keeps within the tolerance. */
export function polygonFit(trace: Trace): Outline | undefined {
  const points = trace.outline.segments.map(({ from }) => from);
  for (const share of SHARES) {
    const corners = fewestCorners(points, share * trace.tolerance).flatMap(
      (number) => points[number] ?? [],
    );
    const segments = corners.map((from, index): Line => {
      return { kind: 'line', from, to: corners[(index + 1) % corners.length] ?? from };
    });
    const fitted = asFit(trace, segments);
    if (fitted !== undefined) {
      return fitted;
    }
  }
  return undefined;
}
