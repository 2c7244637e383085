import { expect, test } from 'vitest';
import { bestFit } from './best-fit.js';
import { traceOf } from './trace.js';
import { polyline, seededRandom } from './traced.test.support.js';

/** A wavy, rough outline that no way to fit does well, so that all of them are tried. */
function roughTrace(count: number) {
  const random = seededRandom(7);
  const points = Array.from({ length: count }, (_, index) => {
    const angle = (2 * Math.PI * index) / count;
    const radius = 60 + 1.5 * Math.sin(24 * angle) + 0.3 * random();
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
  return polyline(points);
}

test('no more points are tried than may be, and one way at least', () => {
  const outline = roughTrace(900);
  for (const most of [0, 1000, 2500, 5000]) {
    const trace = traceOf(outline, 0.2, most / 3);
    const { tried } = bestFit(trace, most);
    expect(tried).toBeGreaterThanOrEqual(trace.ring.size);
    expect(tried).toBeLessThanOrEqual(Math.max(most, trace.ring.size));
  }
});

test('the points along a trace are bounded, however long and fine it is', () => {
  const outline = roughTrace(19_000);
  expect(traceOf(outline, 0.2, Infinity).ring.size).toBeLessThanOrEqual(1600);
  expect(traceOf(outline, 0.2, 100).ring.size).toBeLessThanOrEqual(400);
});
