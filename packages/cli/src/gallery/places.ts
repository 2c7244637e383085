import {
  headingAt,
  headingAtEnd,
  headingAtStart,
  lengthOf,
  type Outline,
  type Point,
  placeSeam,
  pointAt,
  type Segment,
  type Strip,
  totalTurn,
} from '@stripwright/strip-geometry';

/** Where something on the strip comes to lie on the outline. Millimetres, y up. */
export interface Place {
  /** What it is called on the shape, on the strip and in the figures. */
  readonly label: string;
  readonly at: Point;
  /** Unit vector away from the cookie. */
  readonly away: Point;
}

export interface Places {
  readonly seam: Place;
  readonly bends: readonly Place[];
  readonly curves: readonly Place[];
}

/** A joint that turns through less is no corner; far below what a hand can bend. Radians. */
const SMOOTH = 1e-6;

/** Where the seam, the bends and the curves of a strip lie on the outline it was made for. */
export function placesOn(outline: Outline, strip: Strip): Places {
  const { segments } = placeSeam(outline, strip.seam);
  const corners = segments.flatMap((before, index) => {
    const after = segments[(index + 1) % segments.length];
    return after !== undefined && turns(before, after) ? [cornerAt(before, after)] : [];
  });
  if (corners.length !== strip.bends.length) {
    throw new Error(`${corners.length} corners for ${strip.bends.length} bends`);
  }
  const curves = strip.runs.filter((run) => run.kind === 'curve');
  return {
    seam: { label: 'seam', ...seamAt(segments) },
    bends: corners.map((corner, index) => ({ label: bendLabel(index), ...corner })),
    curves: curves.map(({ shape: { segment, start, end } }, index) => {
      const middle = (start + end) / 2;
      const away = rightOf(headingAt(segment, middle));
      return { label: curveLabel(index), at: pointAt(segment, middle), away };
    }),
  };
}

/** Bends are numbered from the square end of the strip. */
export const bendLabel = (index: number): string => `${index + 1}`;

/** Curves are lettered from the square end: a to z, then a2 to z2 and so on. */
export function curveLabel(index: number): string {
  const round = Math.floor(index / 26) + 1;
  return `${String.fromCharCode(97 + (index % 26))}${round === 1 ? '' : round}`;
}

/** Points along a segment, near enough together to look like it, without the last. */
export function pointsOn(segment: Segment): readonly Point[] {
  if (segment.kind === 'line') return [segment.from];
  const steps = Math.max(8, Math.ceil(Math.abs(totalTurn(segment)) / CHORD));
  const length = lengthOf(segment);
  return Array.from({ length: steps }, (_, step) => pointAt(segment, (length * step) / steps));
}

/** Radians: chords of a circle as wide as a page stray from it by less than a pen's width. */
const CHORD = 0.05;

function turns(before: Segment, after: Segment): boolean {
  const [one, other] = [headingAtEnd(before), headingAtStart(after)];
  return Math.abs(Math.atan2(cross(one, other), dot(one, other))) > SMOOTH;
}

function cornerAt(before: Segment, after: Segment) {
  const [one, other] = [rightOf(headingAtEnd(before)), rightOf(headingAtStart(after))];
  return { at: after.from, away: unit({ x: one.x + other.x, y: one.y + other.y }) };
}

function seamAt(segments: readonly Segment[]) {
  const [first, last] = [segments[0], segments.at(-1)];
  if (first === undefined || last === undefined) throw new Error('an outline without segments');
  return cornerAt(last, first);
}

const rightOf = ({ x, y }: Point): Point => ({ x: y, y: -x });
const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

function unit({ x, y }: Point): Point {
  const size = Math.hypot(x, y);
  return { x: x / size, y: y / size };
}
