import {
  headingAt,
  headingAtEnd,
  headingAtStart,
  lengthOf,
  type Point,
  pointAt,
  type Segment,
  type Strip,
} from '@stripwright/strip-geometry';

/** A place on an outline. Millimetres, y up. */
export interface PlaceOnOutline {
  readonly at: Point;
  /** Unit vector away from the cookie. */
  readonly away: Point;
}

/** Where on its outline a strip comes to lie. */
export interface OutlinePlaces {
  /** By the numbers of the bends. */
  readonly bends: readonly PlaceOnOutline[];
  /** The middles of the curves. */
  readonly curves: readonly PlaceOnOutline[];
  readonly start: PlaceOnOutline;
  readonly end: PlaceOnOutline;
  /** Distances along the outline of start and end. */
  readonly from: number;
  readonly to: number;
}

/** Radians; a joint that turns through less is smooth, as the strip takes it. */
const SMOOTH = 1e-6;
const NEAR = 1e-6;

/**
 * @param path the outline from where the strip begins, or the first of its parts
 * @param parts all the strips that it is bent from, in their order
 * @param index which of them is asked for
 * @param cornerAngle degrees; corners that turn through no more are formed
 */
export function outlinePlaces(
  path: readonly Segment[],
  parts: readonly Strip[],
  index: number,
  cornerAngle = 0,
): OutlinePlaces {
  const strip = parts[index];
  if (strip === undefined) throw new Error(`no part ${index + 1}`);
  const corners = cornersOf(path, Math.max((cornerAngle * Math.PI) / 180, SMOOTH));
  const known = anchorsOf(path, parts, corners);
  const before = parts.slice(0, index);
  const offset = sum(before.map(({ developed }) => developed));
  const bendsBefore = sum(before.map(({ bends }) => bends.length));
  const bendsInAll = sum(parts.map(({ bends }) => bends.length));
  const onOutline = (developed: number): number => interpolated(known, developed);
  const place = (along: number): PlaceOnOutline => placeAt(path, along);
  const own = (along: number): number => offset + along - strip.seam.atStart;
  const [from, to] = [onOutline(offset), onOutline(offset + strip.developed)];
  return {
    bends: strip.bends.map(({ at }, bend) => {
      const corner = corners.length === bendsInAll ? corners[bendsBefore + bend] : undefined;
      return corner?.place ?? place(onOutline(own(at)));
    }),
    curves: strip.curves.map((curve) => place(onOutline(own((curve.from + curve.to) / 2)))),
    start: place(from),
    end: place(to),
    from,
    to,
  };
}

/** The place so far along a path. */
export function placeAt(path: readonly Segment[], along: number): PlaceOnOutline {
  let start = 0;
  for (const [index, segment] of path.entries()) {
    const length = lengthOf(segment);
    if (along <= start + length || index === path.length - 1) {
      const own = Math.min(Math.max(along - start, 0), length);
      return { at: pointAt(segment, own), away: rightOf(headingAt(segment, own)) };
    }
    start += length;
  }
  throw new Error('an outline without segments');
}

interface Corner {
  /** Distance along the path. */
  readonly along: number;
  readonly place: PlaceOnOutline;
}

function cornersOf(path: readonly Segment[], smooth: number): readonly Corner[] {
  let along = 0;
  return path.flatMap((before, index) => {
    along += lengthOf(before);
    const after = path[(index + 1) % path.length] ?? before;
    const [one, other] = [headingAtEnd(before), headingAtStart(after)];
    const turn = Math.atan2(one.x * other.y - one.y * other.x, one.x * other.x + one.y * other.y);
    if (Math.abs(turn) <= smooth) return [];
    const away = unit(rightOf({ x: one.x + other.x, y: one.y + other.y }));
    return [{ along, place: { at: after.from, away } }];
  });
}

/** A place that is known both along the developed strip and along the outline. */
interface Anchor {
  readonly developed: number;
  readonly along: number;
}

function anchorsOf(
  path: readonly Segment[],
  parts: readonly Strip[],
  corners: readonly Corner[],
): readonly Anchor[] {
  const starts: number[] = [];
  const whole = path.reduce((at, segment) => {
    starts.push(at);
    return at + lengthOf(segment);
  }, 0);
  const bendsInAll = sum(parts.map(({ bends }) => bends.length));
  const anchors: Anchor[] = [{ developed: 0, along: 0 }];
  let [offset, bend, reached] = [0, 0, 0];
  for (const { runs, seam, developed } of parts) {
    for (const run of runs) {
      const own = (at: number): number => offset + at - seam.atStart;
      if (run.kind === 'bend') {
        const corner = corners[bend++];
        if (corner !== undefined && corners.length === bendsInAll) {
          anchors.push({ developed: own((run.from + run.to) / 2), along: corner.along });
        }
      } else if (run.kind === 'curve') {
        const { segment, start, end } = run.shape;
        const found = path.findIndex((one, index) => index >= reached && isSame(one, segment));
        if (found >= 0) {
          reached = found;
          const first = starts[found] ?? 0;
          anchors.push(
            { developed: own(run.from), along: first + start },
            { developed: own(run.to), along: first + end },
          );
        }
      }
    }
    offset += developed;
  }
  anchors.push({ developed: offset, along: whole });
  return anchors.sort((a, b) => a.developed - b.developed || a.along - b.along);
}

function isSame(one: Segment, other: Segment): boolean {
  const [a, b] = [one.from, other.from];
  return (
    one.kind === other.kind &&
    Math.hypot(a.x - b.x, a.y - b.y) <= NEAR &&
    Math.abs(lengthOf(one) - lengthOf(other)) <= NEAR
  );
}

function interpolated(anchors: readonly Anchor[], developed: number): number {
  for (const [index, next] of anchors.entries()) {
    const before = anchors[index - 1];
    if (before === undefined || next.developed < developed) continue;
    const gap = next.developed - before.developed;
    const share = gap <= 0 ? 1 : (developed - before.developed) / gap;
    return before.along + share * (next.along - before.along);
  }
  return developed <= 0 ? 0 : (anchors.at(-1)?.along ?? 0);
}

const rightOf = ({ x, y }: Point): Point => ({ x: y, y: -x });
const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

function unit({ x, y }: Point): Point {
  const size = Math.hypot(x, y);
  return size === 0 ? { x: 1, y: 0 } : { x: x / size, y: y / size };
}
