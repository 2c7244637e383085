import fc from 'fast-check';
import SVGPathCommander from 'svg-path-commander';
import svgpath from 'svgpath';
import { expect, test } from 'vitest';
import type { Point } from '../outline.js';
import { lengthOf } from '../segment.js';
import { mapPiece, type Piece } from './drawn-path.js';
import type { Matrix } from './matrix.js';
import { readPathData } from './path-data.js';
import { segmentOfPiece } from './segment-of-piece.js';

// An independent reader of paths (svg-path-commander) gives the lengths to compare with. What it
// is good for was found out first, against fine quadrature. Lines are exact, and so are arcs of
// ellipses up to about ten times as long as wide; of flatter ones it is off by 1e-6 and more, and
// of some arcs of just half an ellipse it measures the wrong half. Quadratic and cubic curves are
// good to 2e-3 only where they turn sharply, since it takes a fixed number of nodes. So it parses
// the path and makes it absolute, and measures each curve cut in many by de Casteljau's
// construction. It counts as accurate where twice as many cuts change its figure by no more than
// 2e-7, and where a dense polyline bears it out. Elsewhere our length is held against the polyline,
// to the polyline's own error.

const place = { element: 'path', id: undefined, line: 1, column: 1 };
const number = fc.integer({ min: -4000, max: 4000 }).map((value) => value / 40);
const positive = fc.integer({ min: 40, max: 4000 }).map((value) => value / 40);
const flag = fc.constantFrom('0', '1');
const words = (count: number) => fc.array(number, { minLength: count, maxLength: count });

const counts = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2 } as const;
const plain = (letter: keyof typeof counts) =>
  words(counts[letter]).map((numbers) => ({ letter, text: numbers.join(' ') }));
const arc = fc
  .tuple(positive, positive, number, flag, flag, number, number)
  .map((numbers) => ({ letter: 'A', text: numbers.join(',') }));
const close = words(2).map((numbers) => ({ letter: 'Z', text: `M${numbers.join(' ')}` }));
const anyCommand = fc
  .tuple(
    fc.oneof(
      ...(['L', 'H', 'V', 'C', 'S', 'Q', 'T'] as const).map(plain),
      arc,
      { arbitrary: plain('M'), weight: 1 },
      close,
    ),
    fc.boolean(),
  )
  .map(([{ letter, text }, relative]) => (relative ? letter.toLowerCase() : letter) + text);
const anyPath = fc
  .tuple(plain('M'), fc.array(anyCommand, { minLength: 2, maxLength: 12 }))
  .map(([{ text }, commands]) => `M${text}${commands.map(keptApart).join(' ')}`);

/**
 * The library reflects a control point for an S or T even where the command
 * before is of another kind, which the standard (SVG 1.1, 8.3.6) forbids; a line
 * of no length keeps the two apart.
 */
function keptApart(command: string, index: number, all: readonly string[]): string {
  const before = all[index - 1] ?? 'M';
  const alike = /^s/i.test(command) ? /^[cs]/i : /^t/i.test(command) ? /^[qt]/i : /^./;
  return alike.test(before) ? command : `l0 0${command}`;
}

const factor = fc.integer({ min: -200, max: 200 }).map((value) => value / 100);
const anyMatrix: fc.Arbitrary<Matrix> = fc
  .record({ a: factor, b: factor, c: factor, d: factor, e: number, f: number })
  .filter(({ a, b, c, d }) => Math.abs(a * d - b * c) > 0.1);

function ourLength(data: string, matrix: Matrix): number {
  return readPathData(data, place)
    .flatMap(({ pieces }) => pieces)
    .map((piece) => segmentOfPiece(mapPiece(piece, matrix)))
    .reduce((sum, segment) => sum + lengthOf(segment), 0);
}

const between = (a: Point, b: Point, share: number) => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

/** The part of a Bezier curve from `start` to its end, and the part before, by de Casteljau. */
function split(points: readonly Point[], share: number): readonly [Point[], Point[]] {
  const rows: Point[][] = [[...points]];
  for (let row = rows[0] ?? []; row.length > 1; row = rows.at(-1) ?? []) {
    rows.push(row.slice(1).map((point, index) => between(row[index] ?? point, point, share)));
  }
  const first = rows.flatMap((row) => row.slice(0, 1));
  const last = rows.flatMap((row) => row.slice(-1)).reverse();
  return [first, last];
}

const print = (points: readonly Point[]) => points.map(({ x, y }) => `${x} ${y}`).join(' ');

/** The library's reading of a path under a map, its curves cut in `parts`, as its length. */
function libraryLength(data: string, { a, b, c, d, e, f }: Matrix, parts: number): number {
  const map = ({ x, y }: Point) => ({ x: a * x + c * y + e, y: b * x + d * y + f });
  const normal = new SVGPathCommander(data, { round: 'off' }).normalize().segments;
  let here: Point = { x: 0, y: 0 };
  let start = here;
  let total = 0;
  for (const [letter, ...rest] of normal) {
    const numbers = rest.map(Number);
    const points = Array.from({ length: numbers.length / 2 }, (_, index) => ({
      x: numbers[2 * index] ?? Number.NaN,
      y: numbers[2 * index + 1] ?? Number.NaN,
    }));
    const from = here;
    if (letter === 'Z') {
      total += Math.hypot(map(start).x - map(here).x, map(start).y - map(here).y);
      here = start;
    } else if (letter === 'A') {
      here = { x: numbers[5] ?? Number.NaN, y: numbers[6] ?? Number.NaN };
      total += arcLength(`M${print([from])}A${numbers.join(' ')}`, { a, b, c, d, e, f });
    } else {
      here = points.at(-1) ?? here;
      start = letter === 'M' ? here : start;
      if (letter !== 'M') {
        total += curveLength([from, ...points].map(map), parts);
      }
    }
  }
  return total;
}

function curveLength(points: readonly Point[], parts: number): number {
  let left = [...points];
  let text = '';
  const letter = ['', '', 'L', 'Q', 'C'][points.length] ?? '';
  for (let part = 0; part < parts; part++) {
    const [first, last] = split(left, 1 / (parts - part));
    text += `M${print(first.slice(0, 1))}${letter}${print(first.slice(1))}`;
    left = last;
  }
  return SVGPathCommander.getTotalLength(text);
}

/** The library maps the arc too, so that nothing of ours is in the figure. */
function arcLength(text: string, { a, b, c, d, e, f }: Matrix): number {
  const parsed = svgpath(text).matrix([a, b, c, d, e, f]).toString();
  return SVGPathCommander.getTotalLength(parsed);
}

/** Chords from points taken straight from the pieces, `parts` on each. */
function polylineLength(data: string, matrix: Matrix, parts: number): number {
  const pieces = readPathData(data, place).flatMap((path) => path.pieces);
  return pieces.reduce((sum, piece) => {
    const at = pointOn(mapPiece(piece, matrix));
    let length = 0;
    let last = at(0);
    for (let part = 1; part <= parts; part++) {
      const next = at(part / parts);
      length += Math.hypot(next.x - last.x, next.y - last.y);
      last = next;
    }
    return sum + length;
  }, 0);
}

function pointOn(piece: Piece): (share: number) => Point {
  if (piece.kind === 'ellipse') {
    const { centre, u, v, start, sweep } = piece;
    return (share) => {
      const [c, s] = [Math.cos(start + sweep * share), Math.sin(start + sweep * share)];
      return { x: centre.x + u.x * c + v.x * s, y: centre.y + u.y * c + v.y * s };
    };
  }
  const { from, to } = piece;
  const [one, two] =
    piece.kind === 'cubic'
      ? [piece.control1, piece.control2]
      : piece.kind === 'quadratic'
        ? // The same curve as a cubic.
          [between(from, piece.control, 2 / 3), between(to, piece.control, 2 / 3)]
        : [between(from, to, 1 / 3), between(from, to, 2 / 3)];
  return (share) => {
    const rest = 1 - share;
    const [a, b, c, d] = [rest ** 3, 3 * rest * rest * share, 3 * rest * share * share, share ** 3];
    return {
      x: a * from.x + b * one.x + c * two.x + d * to.x,
      y: a * from.y + b * one.y + c * two.y + d * to.y,
    };
  };
}

/** Paths that the library must bear out. */
const COMPARED = 500;
/** A few more, for those it cannot measure; were they many, they might hide a fault of ours. */
const DRAWN = 520;

test('500 random paths, transformed: lengths agree with an independent library to 1e-6', () => {
  let compared = 0;
  const paths = fc.sample(fc.tuple(anyPath, anyMatrix), { numRuns: DRAWN, seed: 96 });
  for (const [data, matrix] of paths) {
    const ours = ourLength(data, matrix);
    expect(Number.isFinite(ours)).toBe(true);

    const dense = polylineLength(data, matrix, 2000);
    // Halving the chords takes off three quarters of the error, so this is more than is left.
    const doubt = dense - polylineLength(data, matrix, 1000) + 1e-9 * dense;
    expect(Math.abs(ours - dense), data).toBeLessThanOrEqual(doubt);

    const coarse = libraryLength(data, matrix, 64);
    const library = libraryLength(data, matrix, 128);
    const settled = Math.abs(coarse - library) <= 2e-7 * library;
    if (settled && Math.abs(library - dense) <= doubt) {
      compared += 1;
      expect(Math.abs(ours - library), data).toBeLessThanOrEqual(1e-6 * library);
    }
  }
  expect(compared).toBeGreaterThanOrEqual(COMPARED);
});

// SVG 1.1, 8.3.6 and 8.3.7: the first control point is the current point unless the command
// before is of the same kind; 8.3.3: after a Z the next path starts where that one did.
test.each([
  ['M1 2 A5 5 0 0 1 11 2 S 5 5 20 0', 'M1 2 A5 5 0 0 1 11 2 C 11 2 5 5 20 0'],
  ['M0 0 Q5 5 10 0 S 5 5 20 0', 'M0 0 Q5 5 10 0 C 10 0 5 5 20 0'],
  ['M0 0 C5 5 5 5 10 0 T 20 0', 'M0 0 C5 5 5 5 10 0 Q 10 0 20 0'],
  ['M0 0 C5 5 6 5 10 0 S 15 5 20 0', 'M0 0 C5 5 6 5 10 0 C 14 -5 15 5 20 0'],
  ['M0 0 Q5 5 10 0 T 20 0', 'M0 0 Q5 5 10 0 Q 15 -5 20 0'],
  ['M3 4 h5 v5 z l-5 -5', 'M3 4 L8 4 L8 9 Z M3 4 L-2 -1'],
  ['m3 4 5 0 0 5', 'M3 4 L8 4 L8 9'],
  ['M0 0a5 5 0 0110 0', 'M0 0A5 5 0 0 1 10 0'],
])('%s is %s', (short, long) => {
  expect(readPathData(short, place)).toEqual(readPathData(long, place));
});
