import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toRadians } from './angle.js';
import { anyNeutralAxis, anyOutlineOfArcs, orSkip } from './any-outline.test.support.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import { develop, type Run } from './develop.js';
import type { Point, Segment } from './outline.js';
import { distance, point, polar, turnedAbout } from './point.js';
import { arc, headingAtStart, line, radiusOf, turnAtJoint } from './segment.js';

// The development is checked by bending it up again: nothing here knows of setbacks or of
// rounded corners. Each run is walked along the cutter's inside face, with the radius that
// its length on the flat, its angle and the neutral line of its bend imply.

/** The path, started in the middle of its first segment, where there is no bend. */
function fromMiddle([first, ...others]: readonly Segment[]): Segment[] {
  if (first === undefined) {
    return [];
  }
  if (first.kind === 'line') {
    const middle = point((first.from.x + first.to.x) / 2, (first.from.y + first.to.y) / 2);
    return [line(middle, first.to), ...others, line(first.from, middle)];
  }
  if (first.kind !== 'arc') {
    throw new Error(`no family draws a ${first.kind}`);
  }
  const half = arc(first.from, first.centre, first.sweep / 2);
  return [{ ...first, from: half.to, sweep: first.sweep / 2 }, ...others, half];
}

/** Radius of the cutter's inside face in a run that turns, from its data on the flat strip. */
function faceRadius(run: Exclude<Run, { kind: 'flat' }>, rule: BendRule): number {
  const neutral = (run.to - run.from) / toRadians(run.angle);
  const { thickness } = rule;
  if (run.kind === 'bend') {
    const depth = rule.allowance(180) / Math.PI - rule.insideRadius;
    return run.direction === 'in' ? neutral - depth : neutral - depth + thickness;
  }
  return run.direction === 'in'
    ? neutral - rule.neutralDepth(run.radius)
    : neutral - rule.neutralDepth(run.radius - thickness) + thickness;
}

interface Place {
  readonly at: Point;
  readonly heading: number;
}

function walk({ at, heading }: Place, run: Run, rule: BendRule): Place {
  if (run.kind === 'flat') {
    return { at: polar(at, run.to - run.from, heading), heading };
  }
  const turn = toRadians(run.angle) * (run.direction === 'in' ? 1 : -1);
  const centre = polar(at, faceRadius(run, rule), heading + (Math.sign(turn) * Math.PI) / 2);
  return { at: turnedAbout(at, centre, turn), heading: heading + turn };
}

/** Distance of a point from the line or circle that a segment lies on. */
function offCarrier(p: Point, segment: Segment): number {
  if (segment.kind === 'arc') {
    return Math.abs(distance(p, segment.centre) - radiusOf(segment));
  }
  const { x, y } = headingAtStart(segment);
  return Math.abs(x * (p.y - segment.from.y) - y * (p.x - segment.from.x));
}

test('bent up again, the strip lies on the outline and its ends meet', () => {
  fc.assert(
    fc.property(anyOutlineOfArcs, anyNeutralAxis, (outline, bendRule) => {
      const path = fromMiddle(outline.segments);
      const runs = runsOf(path, bendRule);
      const [first] = path;
      const heading = first && headingAtStart(first);
      if (first === undefined || heading === undefined) {
        throw new Error('an outline without segments');
      }
      let place: Place = { at: first.from, heading: Math.atan2(heading.y, heading.x) };
      const startHeading = place.heading;
      let sides = 0;
      for (const run of runs) {
        const next = walk(place, run, bendRule);
        if (run.kind !== 'bend') {
          // The outline's segments, in order, one for each flat or curve.
          const side = path[sides];
          expect(side && offCarrier(place.at, side)).toBeLessThan(1e-6);
          expect(side && offCarrier(next.at, side)).toBeLessThan(1e-6);
          expect(side?.kind).toBe(run.kind === 'flat' ? 'line' : 'arc');
          sides++;
        }
        place = next;
      }
      expect(sides).toBe(path.length);
      expect(distance(place.at, first.from)).toBeLessThan(1e-6);
      expect(place.heading - startHeading).toBeCloseTo(2 * Math.PI, 8);
    }),
    { numRuns: 500 },
  );
});

function runsOf(path: readonly Segment[], bendRule: BendRule): readonly Run[] {
  const options = { bendRule, closed: true, metal: 'outside' } as const;
  const { runs } = orSkip(() => develop(path, options));
  // A side that its bends just use up has no run; such rare ties are left out.
  fc.pre(runs.filter(({ kind }) => kind !== 'bend').length === path.length);
  return runs;
}

test('a joint in the middle of a side is smooth', () => {
  fc.assert(
    fc.property(anyOutlineOfArcs, (outline) => {
      const path = fromMiddle(outline.segments);
      const [first, last] = [path[0], path[path.length - 1]];
      expect(first && last && turnAtJoint(last, first)).toBeCloseTo(0, 9);
    }),
  );
});
