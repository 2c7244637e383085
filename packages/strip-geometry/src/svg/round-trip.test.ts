import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyOutlineOf } from '../any-outline.test.support.js';
import { bounds, perimeter, signedArea } from '../measure.js';
import type { Outline, Segment } from '../outline.js';
import { lengthOf, pointAt } from '../segment.js';
import { readSvg } from './read-svg.js';

/** Path data for an outline, typed here from the standard (SVG 1.1, 8.3), in millimetres, y down. */
function pathData({ segments }: Outline, height: number): string {
  const at = ({ x, y }: { readonly x: number; readonly y: number }) => `${x} ${height - y}`;
  const drawn = segments.map((segment) => {
    switch (segment.kind) {
      case 'line':
        return `L${at(segment.to)}`;
      case 'quadratic':
        return `Q${at(segment.control)} ${at(segment.to)}`;
      case 'cubic':
        return `C${at(segment.control1)} ${at(segment.control2)} ${at(segment.to)}`;
      default:
        return halves(segment)
          .map(({ radii, to, large, growing }) => `A${radii} ${large} ${growing} ${at(to)}`)
          .join('');
    }
  });
  const [first] = segments;
  return `M${first ? at(first.from) : ''}${drawn.join('')}Z`;
}

/** An arc as two, since one all round has no ends to tell it by. */
function halves(segment: Segment & { readonly sweep: number }) {
  const circle = segment.kind === 'arc';
  const radius = circle
    ? Math.hypot(segment.from.x - segment.centre.x, segment.from.y - segment.centre.y)
    : 0;
  const radii =
    segment.kind === 'elliptical arc'
      ? `${segment.radiusX} ${segment.radiusY} ${(-segment.rotation * 180) / Math.PI}`
      : `${radius} ${radius} 0`;
  // In half of the sweep, which for an ellipse need not be half of the length.
  const middle =
    segment.kind === 'elliptical arc'
      ? onEllipse(segment)
      : pointAt(segment, lengthOf(segment) / 2);
  const large = Math.abs(segment.sweep) / 2 > Math.PI ? 1 : 0;
  // Anticlockwise with y up is a falling angle with y down.
  const growing = segment.sweep > 0 ? 0 : 1;
  return [middle, segment.to].map((to) => ({ radii, to, large, growing }));
}

function onEllipse({
  centre,
  radiusX,
  radiusY,
  rotation,
  start,
  sweep,
}: Segment & { readonly kind: 'elliptical arc' }) {
  const angle = start + sweep / 2;
  const [x, y] = [radiusX * Math.cos(angle), radiusY * Math.sin(angle)];
  return {
    x: centre.x + x * Math.cos(rotation) - y * Math.sin(rotation),
    y: centre.y + x * Math.sin(rotation) + y * Math.cos(rotation),
  };
}

describe('an outline of every family, written as a path, is read as the same outline', () => {
  test.each(Object.entries(anyOutlineOf))('%s', (_, any) => {
    fc.assert(
      fc.property(any, (drawn) => {
        const svg = `<svg width="400mm" height="300mm" viewBox="0 0 400 300"><path d="${pathData(drawn, 300)}"/></svg>`;
        const [read, ...others] = readSvg(svg, { fit: 'never' });
        expect(others).toEqual([]);
        if (read === undefined) {
          throw new Error('no outline');
        }
        expect(Math.abs(perimeter(read) / perimeter(drawn) - 1)).toBeLessThan(1e-9);
        expect(Math.abs(signedArea(read) / signedArea(drawn) - 1)).toBeLessThan(1e-9);
        const [found, wanted] = [bounds(read), bounds(drawn)];
        for (const side of ['left', 'right', 'bottom', 'top'] as const) {
          expect(found[side]).toBeCloseTo(wanted[side], 6);
        }
      }),
      { numRuns: 25 },
    );
  });
});
