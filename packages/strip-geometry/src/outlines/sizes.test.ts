import { expect, test } from 'vitest';
import { toDegrees } from '../angle.js';
import { bounds } from '../measure.js';
import { OutlineError, type OutlineFault } from '../outline-error.js';
import { distance } from '../point.js';
import { lengthOf, turnAtJoint } from '../segment.js';
import { familyNamed } from './families.js';
import type { OutlineSizes } from './family.js';

function draw(name: string, sizes: OutlineSizes) {
  const family = familyNamed(name);
  if (family === undefined) {
    throw new Error(`no family ${name}`);
  }
  return family.draw(sizes);
}

const corner = (x: number, y: number) => ({ x, y });

test.each<[string, OutlineSizes, OutlineFault, string, string]>([
  ['regular polygon', { sides: 2, side: 9 }, 'out of range', 'sides', 'at least 3; got 2'],
  ['regular polygon', { sides: 6 }, 'missing size', 'side', 'needs one of'],
  [
    'regular polygon',
    { sides: 6, side: 9, 'across flats': 9 },
    'contradictory sizes',
    'across flats',
    'got "side" and "across flats"',
  ],
  [
    'regular polygon',
    { sides: 5, 'across flats': 9 },
    'contradictory sizes',
    'across flats',
    'even number of sides',
  ],
  ['star', { points: 2, across: 9 }, 'out of range', 'points', 'at least 3; got 2'],
  ['star', { points: 4, across: 9 }, 'missing size', 'inner ratio', 'star of 4 points needs'],
  [
    'star',
    { points: 5, across: 9, 'inner ratio': 0.4, 'tip angle': 30 },
    'contradictory sizes',
    'tip angle',
    'got both',
  ],
  // cos 36 degrees, beyond which the inner corners do not turn inward.
  ['star', { points: 5, across: 9, 'inner ratio': 0.81 }, 'out of range', 'inner ratio', '0.809'],
  ['star', { points: 5, across: 9, 'tip angle': 108 }, 'out of range', 'tip angle', 'below 108'],
  [
    'rectangle',
    { long: 3, wide: 4 },
    'contradictory sizes',
    'wide',
    'at most "long", 3 mm; got 4 mm',
  ],
  [
    'rectangle',
    { long: 9, wide: 4, 'corner radius': 2.1 },
    'out of range',
    'corner radius',
    '2 mm; got 2.1 mm',
  ],
  ['heart', { across: 100, high: 69 }, 'out of range', 'high', 'from 70 to 160 mm'],
  ['heart', { across: 100, high: 161 }, 'out of range', 'high', 'got 161'],
  ['crescent', { across: 100, thick: 9 }, 'out of range', 'thick', 'from 10 to 60 mm'],
  ['crescent', { across: 100, thick: 61 }, 'out of range', 'thick', 'got 61'],
  ['acorn', { high: 100, across: 59 }, 'out of range', 'across', 'from 60 to 100 mm'],
  ['sailboat', { across: 100, high: 79 }, 'out of range', 'high', 'from 80 to 160 mm'],
  [
    'polygon',
    { corners: [corner(0, 0), corner(4, 0)] },
    'out of range',
    'corners',
    'at least 3 corners; got 2',
  ],
  [
    'polygon',
    { corners: [corner(0, 0), corner(4, 0), corner(0, 3), corner(0, 0)] },
    'repeated corner',
    'corners',
    'Corner 4 repeats corner 1, (0, 0)',
  ],
  [
    'polygon',
    { corners: [corner(0, 0), corner(4, 3), corner(4, 0), corner(0, 3)] },
    'crosses itself',
    'corners',
    'after corner 1 and the side after corner 3',
  ],
  [
    'polygon: a corner on another side',
    { corners: [corner(0, 0), corner(4, 0), corner(4, 3), corner(2, 0), corner(0, 3)] },
    'crosses itself',
    'corners',
    'after corner 1',
  ],
  [
    'polygon: a side folded back on the one before',
    { corners: [corner(0, 0), corner(4, 0), corner(2, 0), corner(2, 3)] },
    'crosses itself',
    'corners',
    'after corner 1 and the side after corner 2',
  ],
  [
    'polygon: all corners on a line',
    { corners: [corner(0, 0), corner(1, 1), corner(2, 2)] },
    'crosses itself',
    'corners',
    'touch or cross',
  ],
])('%s refuses %o', (name, sizes, code, field, said) => {
  try {
    draw(name.replace(/:.*/, ''), sizes);
  } catch (error) {
    if (error instanceof OutlineError) {
      expect(error).toMatchObject({ code, field });
      expect(error.message).toContain(said);
      return;
    }
    throw error;
  }
  throw new Error('nothing was refused');
});

test('regular polygon: each way to give the size', () => {
  const sideOf = (sizes: OutlineSizes) =>
    draw('regular polygon', sizes).segments.map((segment) => lengthOf(segment));
  for (const side of sideOf({ sides: 10, side: 41.275 })) {
    expect(side).toBeCloseTo(41.275, 10);
  }
  // Elementary geometry: a hexagon's side is half of its width across corners,
  // and 1 / sqrt 3 of its width across flats.
  expect(sideOf({ sides: 6, 'across corners': 80 })[0]).toBeCloseTo(40, 10);
  expect(sideOf({ sides: 6, 'across flats': 75 })[0]).toBeCloseTo(75 / Math.sqrt(3), 10);
});

// Published relation of the pentagram: inner corners at 1 / phi^2 of the tips' radius,
// tips of 36 degrees that turn 144, inner corners that turn 72 the other way.
test('star: a plain five-pointed star is the pentagram', () => {
  const { segments } = draw('star', { points: 5, across: 2 });
  const centre = corner(0, 0);
  segments.forEach((segment, index) => {
    const next = segments[(index + 1) % segments.length] ?? segment;
    const tip = index % 2 === 1;
    expect(distance(segment.to, centre)).toBeCloseTo(tip ? 1 : 0.38196601125, 10);
    expect(toDegrees(turnAtJoint(segment, next))).toBeCloseTo(tip ? 144 : -72, 9);
  });
});

test('star: the tip angle is the angle at the tips', () => {
  for (const [points, angle] of [
    [3, 20],
    [4, 45],
    [5, 36],
    [8, 100],
  ] as const) {
    const { segments } = draw('star', { points, across: 90, 'tip angle': angle });
    const [first, last] = [segments[0], segments[segments.length - 1]];
    expect(first && last && toDegrees(turnAtJoint(last, first))).toBeCloseTo(180 - angle, 9);
  }
});

test('crescent: as thick as stated in the middle', () => {
  const [outer, inner] = draw('crescent', { across: 89, thick: 35 }).segments;
  if (outer?.kind !== 'arc' || inner?.kind !== 'arc') {
    throw new Error('a crescent is two arcs');
  }
  const leftOf = ({ from, centre }: typeof outer) => centre.x - distance(from, centre);
  expect(leftOf(inner) - leftOf(outer)).toBeCloseTo(35, 9);
});

test('heart: the sides run smoothly into the lobes, the point and cleft are sharp', () => {
  const { segments } = draw('heart', { across: 100 });
  const turns = segments.map((segment, index) =>
    toDegrees(turnAtJoint(segment, segments[(index + 1) % segments.length] ?? segment)),
  );
  expect(segments.map(({ kind }) => kind)).toEqual(['line', 'arc', 'arc', 'line']);
  expect(turns[0]).toBeCloseTo(0, 9);
  expect(turns[2]).toBeCloseTo(0, 9);
  // The cleft is 84 degrees wide, as drawn.
  expect(turns[1]).toBeCloseTo(-96, 9);
  expect(turns[3]).toBeGreaterThan(45);
});

test('acorn: the cap is wider than the nut, with a stem on top', () => {
  const outline = draw('acorn', { high: 100 });
  const { across, high } = bounds(outline);
  const [nut, underside] = outline.segments;
  expect(nut && 2 * nut.to.x).toBeLessThan(0.9 * across);
  expect(nut && underside && toDegrees(turnAtJoint(nut, underside))).toBeCloseTo(-90, 9);
  expect(outline.segments.some(({ kind, to }) => kind === 'line' && to.y === high)).toBe(true);
});

test('polygon: accepts either winding and returns the same outline', () => {
  const corners = [corner(0, 0), corner(9, 0), corner(4, 3)];
  const clockwise = [corner(0, 0), corner(4, 3), corner(9, 0)];
  expect(draw('polygon', { corners: clockwise })).toEqual(draw('polygon', { corners }));
});

test('polygon: a corner on a straight side makes no bend', () => {
  const corners = [corner(0, 0), corner(5, 0), corner(9, 0), corner(4, 3)];
  expect(draw('polygon', { corners }).segments).toHaveLength(3);
});

test.each<[string, OutlineSizes, string, string]>([
  ['ellipse', { across: 100, high: 24 }, 'high', 'from 25 to 400 mm'],
  ['oval', { long: 100, wide: 9 }, 'wide', 'from 10 to 95 mm'],
  ['oval', { long: 100, wide: 100 }, 'wide', 'a circle is a family of its own'],
  ['arrow', { long: 100, wide: 101 }, 'wide', 'from 30 to 100 mm'],
  ['arrow', { long: 100, wide: 50, shaft: 41 }, 'shaft', 'from 10 to 40 mm'],
  ['plus sign', { across: 100, arm: 61 }, 'arm', 'from 15 to 60 mm'],
  ['teardrop', { high: 100, across: 81 }, 'across', 'from 50 to 80 mm'],
  ['leaf', { high: 100, across: 39 }, 'across', 'from 40 to 80 mm'],
  ['tree', { high: 100, across: 101 }, 'across', 'from 50 to 100 mm'],
  ['tree', { high: 100, tiers: 5 }, 'tiers', 'from 1 to 4; got 5'],
  ['bell', { high: 100, across: 106 }, 'across', 'from 82 to 105 mm'],
  ['fish', { long: 100, high: 63 }, 'high', 'from 38 to 62 mm'],
  ['house', { across: 100, high: 131 }, 'high', 'from 75 to 130 mm'],
  ['house', { across: 100, chimney: 21 }, 'chimney', 'from 10 to 20 mm'],
  ['flower', { petals: 2, across: 80 }, 'petals', 'from 3 to 16; got 2'],
  ['flower', { petals: 17, across: 80 }, 'petals', 'from 3 to 16; got 17'],
  ['flower', { petals: 6, across: 80, 'petal depth': 40 }, 'petal depth', 'for 6 petals'],
])('%s is refused out of its range: %o', (name, sizes, field, said) => {
  expect(() => draw(name, sizes)).toThrow(OutlineError);
  expect(() => draw(name, sizes)).toThrow(
    expect.objectContaining({
      code: 'out of range',
      field,
      message: expect.stringContaining(said),
    }),
  );
});

/** Degrees turned at each joint, in order. */
function turns(name: string, sizes: OutlineSizes): number[] {
  const { segments } = draw(name, sizes);
  return segments.map((segment, index) =>
    toDegrees(turnAtJoint(segment, segments[(index + 1) % segments.length] ?? segment)),
  );
}

/** How many corners a bench bends, in and out. */
function corners(name: string, sizes: OutlineSizes): [into: number, out: number] {
  const sharp = turns(name, sizes).filter((turn) => Math.abs(turn) > 1e-3);
  return [sharp.filter((turn) => turn > 0).length, sharp.filter((turn) => turn < 0).length];
}

test.each<[string, OutlineSizes, [number, number]]>([
  ['ellipse', { across: 90, high: 60 }, [0, 0]],
  ['oval', { long: 90, wide: 50 }, [0, 0]],
  ['gingerbread figure', { high: 120 }, [0, 0]],
  ['teardrop', { high: 90 }, [1, 0]],
  ['leaf', { high: 95 }, [3, 2]],
  ['flower', { petals: 7, across: 80 }, [0, 7]],
  ['bell', { high: 85 }, [0, 4]],
  ['fish', { long: 105 }, [2, 2]],
  ['arrow', { long: 95 }, [5, 2]],
  ['plus sign', { across: 80 }, [8, 4]],
  ['tree', { high: 100 }, [9, 6]],
  ['tree', { high: 100, tiers: 1 }, [5, 2]],
  ['house', { across: 85 }, [5, 2]],
  ['house', { across: 85, chimney: 12 }, [7, 5]],
])('%s %o has no sharp corners but those it should', (name, sizes, expected) => {
  expect(corners(name, sizes)).toEqual(expected);
});

test('flower: the clefts lie as deep as asked, and as wide as drawn without it', () => {
  const deep = draw('flower', { petals: 5, across: 80, 'petal depth': 9 });
  for (const { from } of deep.segments) {
    expect(distance(from, corner(0, 0))).toBeCloseTo(31, 9);
  }
  for (const petals of [3, 6, 16]) {
    for (const turn of turns('flower', { petals, across: 80 })) {
      // The cleft is 84 degrees wide.
      expect(turn).toBeCloseTo(-96, 9);
    }
  }
});

test('tree: the boughs of all tiers are parallel', () => {
  const { segments } = draw('tree', { high: 100, tiers: 4 });
  const right = segments.filter(({ from, to }) => to.x >= 0 && from.x > to.x && to.y - from.y > 9);
  expect(right).toHaveLength(4);
  const slopes = right.map(({ from, to }) => (to.y - from.y) / (from.x - to.x));
  for (const slope of slopes) {
    expect(slope).toBeCloseTo(slopes[0] ?? 0, 9);
  }
});
