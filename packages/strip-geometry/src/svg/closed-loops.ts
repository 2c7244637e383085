import { FULL_TURN } from '../angle.js';
import { signedArea } from '../measure.js';
import type { Segment } from '../outline.js';
import { distance } from '../point.js';
import { lengthOf, reversedPath } from '../segment.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { scaled } from '../transform.js';
import { printLength, printPoint } from '../wording.js';
import type { DrawnPath } from './drawn-path.js';
import type { DrawnShape } from './drawn-shapes.js';
import { FARTHEST } from './limits.js';
import { redrawn } from './redrawn.js';
import { segmentOfPiece } from './segment-of-piece.js';
import { SvgError, type SvgPlace } from './svg-error.js';

/** A closed line, run anticlockwise, with what drew it. */
export interface Loop {
  readonly place: SvgPlace;
  readonly id: string | undefined;
  readonly segments: readonly Segment[];
}

/** A path whose ends are no farther apart counts as closed, millimetres. */
export const CLOSING_TOLERANCE = 0.01;

/** Where places in messages are measured from. */
export const ORIGIN = 'the corner of the page, y up';

/**
 * The closed lines that shapes draw, enlarged by `scale` and run
 * anticlockwise. Pieces without length are dropped, gaps up to the closing
 * tolerance drawn shut.
 *
 * @throws SvgError `open path`, unless those are left out; `out of range`.
 */
export function closedLoops(
  shapes: readonly DrawnShape[],
  scale: number,
  leaveOutOpen: boolean,
): readonly Loop[] {
  return shapes.flatMap(({ place, id, paths }) =>
    paths.flatMap((path): Loop[] => {
      const drawn = segmentsOf(path, scale, place);
      const [first, last] = [drawn[0], drawn.at(-1)];
      if (first === undefined || last === undefined) {
        return [];
      }
      const gap = distance(last.to, first.from);
      if (gap > CLOSING_TOLERANCE) {
        if (leaveOutOpen) {
          return [];
        }
        throw openPath(place, first, last);
      }
      const segments = drawnShut(drawn);
      const isClockwise = signedArea({ name: '', segments }) < 0;
      return [{ place, id, segments: isClockwise ? reversedPath(segments) : segments }];
    }),
  );
}

function segmentsOf({ pieces }: DrawnPath, scale: number, place: SvgPlace): readonly Segment[] {
  const outline = { name: '', segments: pieces.map(segmentOfPiece) };
  const segments: Segment[] = [];
  for (const segment of scaled(outline, scale).segments) {
    refuseFarAway(segment, place);
    if (lengthOf(segment) > LENGTH_TOLERANCE) {
      const start = segments.at(-1)?.to ?? segment.from;
      const meets = segment.from.x === start.x && segment.from.y === start.y;
      segments.push((meets ? segment : redrawn(segment, start, segment.to)) ?? segment);
    }
  }
  return segments;
}

function refuseFarAway(segment: Segment, place: SvgPlace): void {
  const points = [segment.from, segment.to];
  if (segment.kind === 'cubic') {
    points.push(segment.control1, segment.control2);
  } else if (segment.kind === 'quadratic') {
    points.push(segment.control);
  } else if (segment.kind === 'elliptical arc') {
    points.push({ x: segment.radiusX, y: segment.radiusY });
  }
  const farthest = Math.max(...points.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]));
  if (!(farthest <= FARTHEST)) {
    const message =
      `It reaches ${printLength(farthest)} from the corner of the page; nothing may lie ` +
      `farther than ${printLength(FARTHEST)}. Check the size of the drawing and its transforms.`;
    throw new SvgError('out of range', message, place);
  }
}

/** The path with its last end put exactly on its first start, across a small gap. */
function drawnShut(drawn: readonly Segment[]): readonly Segment[] {
  const segments = withoutClosingLines(drawn);
  const [first, last] = [segments[0], segments.at(-1)];
  if (first === undefined || last === undefined) {
    return segments;
  }
  const { from } = first;
  const before = segments.slice(0, -1);
  if (last.to.x === from.x && last.to.y === from.y) {
    return segments;
  }
  const shut = redrawn(last, last.from, from);
  if (shut !== undefined) {
    return [...before, shut];
  }
  if (before.length === 0 && 'sweep' in last) {
    return [{ ...last, to: from, sweep: Math.sign(last.sweep) * FULL_TURN }];
  }
  return [...segments, { kind: 'line', from: last.to, to: from }];
}

/** Short lines that only close the path, which would make two bends of nothing, are left out. */
function withoutClosingLines(segments: readonly Segment[]): readonly Segment[] {
  let [count, dropped] = [segments.length, 0];
  for (let last = segments.at(-1); count > 1 && last?.kind === 'line'; last = segments[count - 1]) {
    dropped += lengthOf(last);
    if (dropped > CLOSING_TOLERANCE) {
      break;
    }
    count -= 1;
  }
  return segments.slice(0, count);
}

function openPath(place: SvgPlace, first: Segment, last: Segment): SvgError {
  const message =
    `The path is open: it starts at ${printPoint(first.from)} and ends at ` +
    `${printPoint(last.to)}, ${printLength(distance(last.to, first.from))} apart (places in ` +
    `millimetres from ${ORIGIN}). Join its ends in the drawing program, or leave open paths out.`;
  return new SvgError('open path', message, place);
}
