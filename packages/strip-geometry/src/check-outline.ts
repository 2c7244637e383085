import { FULL_TURN } from './angle.js';
import { isCarried } from './carrier.js';
import { sharedPoint } from './crossing.js';
import { signedArea } from './measure.js';
import type { Arc, Outline, Segment } from './outline.js';
import { OutlineError } from './outline-error.js';
import { distance, turnedAbout } from './point.js';
import { lengthOf } from './segment.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from './tolerance.js';
import { printLength, printNumber, printPoint } from './wording.js';

/**
 * Checks that an outline is what `Outline` promises: at least one segment,
 * every number finite, no segment without length, every arc true to its
 * centre and sweep, closed, run anticlockwise, and no two segments that touch
 * or cross apart from neighbours at their joint. Neighbours are not searched
 * for a second meeting. Segments are counted from 1 in messages.
 *
 * @throws OutlineError at the first fault, with the segment and both numbers.
 */
export function checkOutline(outline: Outline): void {
  const { name, segments } = outline;
  if (segments.length === 0) {
    throw new OutlineError('not closed', `The outline "${name}" has no segments; it needs some.`);
  }
  segments.forEach((segment, index) => {
    checkSegment(segment, `Segment ${index + 1} of "${name}"`);
  });
  segments.forEach((segment, index) => {
    const next = segments[(index + 1) % segments.length] ?? segment;
    const gap = distance(segment.to, next.from);
    if (gap > LENGTH_TOLERANCE) {
      const nextNumber = ((index + 1) % segments.length) + 1;
      throw new OutlineError(
        'not closed',
        `Segment ${index + 1} of "${name}" ends at ${printPoint(segment.to)} but segment ` +
          `${nextNumber} starts at ${printPoint(next.from)}; they must meet.`,
      );
    }
  });
  checkCrossings(outline);
  const area = signedArea(outline);
  if (!(area > 0)) {
    throw new OutlineError(
      'clockwise',
      `The outline "${name}" has a signed area of ${printNumber(area)} square mm, so it runs ` +
        'clockwise; it must run anticlockwise, with an area above 0. Run its segments backwards.',
    );
  }
}

function checkCrossings({ name, segments }: Outline): void {
  segments.forEach((segment, index) => {
    for (let other = index + 2; other < segments.length; other++) {
      const opposite = segments[other];
      const neighbours = index === 0 && other === segments.length - 1;
      const shared =
        opposite && !neighbours && isCarried(segment) && isCarried(opposite)
          ? sharedPoint(segment, opposite)
          : undefined;
      if (shared !== undefined) {
        throw new OutlineError(
          'crosses itself',
          `Segments ${index + 1} and ${other + 1} of "${name}" touch or cross at ` +
            `${printPoint(shared)}; an outline may not cross itself.`,
        );
      }
    }
  });
}

function checkSegment(segment: Segment, which: string): void {
  const numbers = [segment.from.x, segment.from.y, segment.to.x, segment.to.y];
  if (segment.kind === 'arc') {
    numbers.push(segment.centre.x, segment.centre.y, segment.sweep);
  }
  const odd = numbers.find((number) => !Number.isFinite(number));
  if (odd !== undefined) {
    throw new OutlineError(
      'not a number',
      `${which} contains ${odd}; every number must be finite.`,
    );
  }
  const length = lengthOf(segment);
  if (length <= LENGTH_TOLERANCE) {
    throw new OutlineError(
      'zero length',
      `${which} is ${printLength(length)} long at ${printPoint(segment.from)}; leave it out, or ` +
        `make it longer than ${LENGTH_TOLERANCE} mm.`,
    );
  }
  if (segment.kind === 'arc') {
    checkArc(segment, which);
  }
}

function checkArc(segment: Arc, which: string): void {
  if (Math.abs(segment.sweep) > FULL_TURN + ANGLE_TOLERANCE) {
    throw new OutlineError(
      'bad arc',
      `${which} sweeps ${printNumber(segment.sweep)} radians; an arc sweeps at most a full turn, ` +
        `${printNumber(FULL_TURN)}.`,
    );
  }
  const arrives = turnedAbout(segment.from, segment.centre, segment.sweep);
  if (distance(arrives, segment.to) > LENGTH_TOLERANCE) {
    throw new OutlineError(
      'bad arc',
      `${which} says it ends at ${printPoint(segment.to)}, but its centre and sweep bring it to ` +
        `${printPoint(arrives)}; they must agree.`,
    );
  }
}
