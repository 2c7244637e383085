import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toRadians } from '../angle.js';
import type { Piece } from './drawn-path.js';
import { type EndpointArc, pieceOfArc } from './endpoint-arc.js';

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const radius = fc.double({ min: 0.5, max: 200, noNaN: true });
const anyArc: fc.Arbitrary<EndpointArc> = fc
  .record({
    from: fc.record({ x: coordinate, y: coordinate }),
    to: fc.record({ x: coordinate, y: coordinate }),
    radiusX: radius,
    radiusY: radius,
    rotation: fc.double({ min: -720, max: 720, noNaN: true }),
    large: fc.boolean(),
    growing: fc.boolean(),
  })
  .filter(({ from, to }) => Math.hypot(from.x - to.x, from.y - to.y) > 0.01);

function ellipse(arc: EndpointArc): Piece & { readonly kind: 'ellipse' } {
  const piece = pieceOfArc(arc);
  if (piece?.kind !== 'ellipse') {
    throw new Error('no ellipse');
  }
  return piece;
}

const at = ({ centre, u, v }: Piece & { readonly kind: 'ellipse' }, t: number) => ({
  x: centre.x + u.x * Math.cos(t) + v.x * Math.sin(t),
  y: centre.y + u.y * Math.cos(t) + v.y * Math.sin(t),
});

/** F.6.5 of SVG 1.1, typed as printed there: equations 5.1 to 5.6. */
function byTheBook(arc: EndpointArc) {
  const phi = toRadians(arc.rotation);
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  const [x1, y1, x2, y2] = [arc.from.x, arc.from.y, arc.to.x, arc.to.y];
  const x1p = (cos * (x1 - x2)) / 2 + (sin * (y1 - y2)) / 2;
  const y1p = (-sin * (x1 - x2)) / 2 + (cos * (y1 - y2)) / 2;
  let [rx, ry] = [arc.radiusX, arc.radiusY];
  const lambda = x1p ** 2 / rx ** 2 + y1p ** 2 / ry ** 2;
  if (lambda > 1) {
    rx *= Math.sqrt(lambda);
    ry *= Math.sqrt(lambda);
  }
  const below = rx ** 2 * y1p ** 2 + ry ** 2 * x1p ** 2;
  // F.6.6: enlarged radii have just one solution, so the root is 0.
  const root = lambda > 1 ? 0 : Math.sqrt((rx ** 2 * ry ** 2 - below) / below);
  const sign = arc.large === arc.growing ? -1 : 1;
  const cxp = (sign * root * (rx * y1p)) / ry;
  const cyp = (sign * root * -(ry * x1p)) / rx;
  const angle = (ux: number, uy: number, vx: number, vy: number) =>
    (ux * vy - uy * vx < 0 ? -1 : 1) *
    Math.acos(
      Math.min(Math.max((ux * vx + uy * vy) / Math.hypot(ux, uy) / Math.hypot(vx, vy), -1), 1),
    );
  const first = [(x1p - cxp) / rx, (y1p - cyp) / ry] as const;
  const last = [(-x1p - cxp) / rx, (-y1p - cyp) / ry] as const;
  let sweep = angle(...first, ...last);
  if (!arc.growing && sweep > 0) sweep -= 2 * Math.PI;
  if (arc.growing && sweep < 0) sweep += 2 * Math.PI;
  const centre = {
    x: cos * cxp - sin * cyp + (x1 + x2) / 2,
    y: sin * cxp + cos * cyp + (y1 + y2) / 2,
  };
  return { centre, rx, ry, lambda, sweep };
}

test('agrees with the conversion as the standard prints it', () => {
  fc.assert(
    fc.property(anyArc, (arc) => {
      const piece = ellipse(arc);
      const book = byTheBook(arc);
      // Where the ellipse only just reaches, the root of a difference of nearly equal numbers
      // keeps half the digits, in the book's form more so than in ours.
      fc.pre(book.lambda > 1 || book.lambda < 1 - 1e-6);
      // acos near a half turn keeps half the digits, so the book's own angle is good to 1e-6.
      expect(Math.abs(piece.sweep)).toBeCloseTo(Math.abs(book.sweep), 5);
      expect(piece.centre.x).toBeCloseTo(book.centre.x, 4);
      expect(piece.centre.y).toBeCloseTo(book.centre.y, 4);
      expect(Math.hypot(piece.u.x, piece.u.y)).toBeCloseTo(book.rx, 6);
      expect(Math.hypot(piece.v.x, piece.v.y)).toBeCloseTo(book.ry, 6);
    }),
  );
});

test('starts and ends where it is told, the way round that the flags tell', () => {
  fc.assert(
    fc.property(anyArc, (arc) => {
      const piece = ellipse(arc);
      const [first, last] = [at(piece, piece.start), at(piece, piece.start + piece.sweep)];
      expect(Math.hypot(first.x - arc.from.x, first.y - arc.from.y)).toBeLessThan(1e-9);
      expect(Math.hypot(last.x - arc.to.x, last.y - arc.to.y)).toBeLessThan(1e-9);
      // SVG 1.1, 8.3.8: large means a sweep of 180 degrees or more; the sweep flag,
      // that the angle grows.
      expect(Math.sign(piece.sweep)).toBe(arc.growing ? 1 : -1);
      if (Math.abs(Math.abs(piece.sweep) - Math.PI) > 1e-6) {
        expect(Math.abs(piece.sweep) > Math.PI).toBe(arc.large);
      }
    }),
  );
});

test('radii that are too small are enlarged until they just reach (F.6.6)', () => {
  const piece = ellipse({
    from: { x: 0, y: 0 },
    to: { x: 100, y: 0 },
    radiusX: 10,
    radiusY: 5,
    rotation: 0,
    large: false,
    growing: true,
  });
  expect(Math.hypot(piece.u.x, piece.u.y)).toBeCloseTo(50, 12);
  expect(Math.hypot(piece.v.x, piece.v.y)).toBeCloseTo(25, 12);
  expect(piece.sweep).toBeCloseTo(Math.PI, 12);
  expect(piece.centre.x).toBeCloseTo(50, 12);
});

test('a radius of 0 makes a line, an arc to its own start nothing (F.6.2)', () => {
  const arc = { rotation: 0, large: true, growing: true, radiusX: 0, radiusY: 9 };
  const [from, to] = [
    { x: 1, y: 2 },
    { x: 3, y: 4 },
  ];
  expect(pieceOfArc({ ...arc, from, to })).toEqual({ kind: 'line', from, to });
  expect(pieceOfArc({ ...arc, from, to: from })).toBeUndefined();
});

// SVG 1.1, 8.3.8, worked example: "M300,200 h-150 a150,150 0 1,0 150,-150 z" is a pie
// with a quarter missing.
test('the three-quarter pie of the standard', () => {
  const piece = ellipse({
    from: { x: 150, y: 200 },
    to: { x: 300, y: 50 },
    radiusX: 150,
    radiusY: 150,
    rotation: 0,
    large: true,
    growing: false,
  });
  expect(piece.centre.x).toBeCloseTo(300, 10);
  expect(piece.centre.y).toBeCloseTo(200, 10);
  expect(piece.sweep).toBeCloseTo(-1.5 * Math.PI, 12);
});
