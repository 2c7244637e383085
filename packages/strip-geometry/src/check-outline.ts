import { FULL_TURN } from './angle.js';
import { parametric } from './curves/parametric-curve.js';
import { signedArea } from './measure.js';
import type { Arc, EllipticalArc, Outline, Point, Segment } from './outline.js';
import { OutlineError } from './outline-error.js';
import { distance } from './point.js';
import { lengthOf } from './segment.js';
import { selfCrossing } from './self-crossing.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from './tolerance.js';
import { printLength, printNumber, printPoint } from './wording.js';

/**
 * Checks that an outline is what `Outline` promises: at least one segment,
 * every number finite, no segment without length, every arc true to its
 * centre, radii and sweep, closed, run anticlockwise, and nowhere touching or
 * crossing itself, see `selfCrossing`. Segments are counted from 1 in messages.
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
  const crossing = selfCrossing(segments);
  if (crossing === undefined) {
    return;
  }
  const { first, second, at } = crossing;
  const where =
    first === second
      ? `Segment ${first + 1} of "${name}" crosses or runs back over itself at `
      : `Segments ${first + 1} and ${second + 1} of "${name}" touch or cross at `;
  throw new OutlineError(
    'crosses itself',
    `${where}${printPoint(at)}; an outline may not cross itself.`,
  );
}

function checkSegment(segment: Segment, which: string): void {
  const odd = numbersOf(segment).find((number) => !Number.isFinite(number));
  if (odd !== undefined) {
    throw new OutlineError(
      'not a number',
      `${which} contains ${odd}; every number must be finite.`,
    );
  }
  if (segment.kind === 'elliptical arc') {
    checkRadii(segment, which);
  }
  const length = lengthOf(segment);
  if (length <= LENGTH_TOLERANCE) {
    throw new OutlineError(
      'zero length',
      `${which} is ${printLength(length)} long at ${printPoint(segment.from)}; leave it out, or ` +
        `make it longer than ${LENGTH_TOLERANCE} mm.`,
    );
  }
  if (segment.kind === 'arc' || segment.kind === 'elliptical arc') {
    checkArc(segment, which);
  }
}

function numbersOf(segment: Segment): number[] {
  const { from, to } = segment;
  const ends = [from.x, from.y, to.x, to.y];
  switch (segment.kind) {
    case 'line':
      return ends;
    case 'quadratic':
      return [...ends, segment.control.x, segment.control.y];
    case 'cubic': {
      const { control1, control2 } = segment;
      return [...ends, control1.x, control1.y, control2.x, control2.y];
    }
    case 'arc':
      return [...ends, segment.centre.x, segment.centre.y, segment.sweep];
    case 'elliptical arc': {
      const { centre, radiusX, radiusY, rotation, start, sweep } = segment;
      return [...ends, centre.x, centre.y, radiusX, radiusY, rotation, start, sweep];
    }
  }
}

function checkRadii({ radiusX, radiusY }: EllipticalArc, which: string): void {
  if (!(radiusX > LENGTH_TOLERANCE && radiusY > LENGTH_TOLERANCE)) {
    throw new OutlineError(
      'bad arc',
      `${which} has radii of ${printLength(radiusX)} and ${printLength(radiusY)}; both must be ` +
        'above 0.',
    );
  }
}

function checkArc(segment: Arc | EllipticalArc, which: string): void {
  if (Math.abs(segment.sweep) > FULL_TURN + ANGLE_TOLERANCE) {
    throw new OutlineError(
      'bad arc',
      `${which} sweeps ${printNumber(segment.sweep)} radians; an arc sweeps at most a full turn, ` +
        `${printNumber(FULL_TURN)}.`,
    );
  }
  const { at } = parametric(segment);
  checkAgreement(which, 'starts', segment.from, at(0));
  checkAgreement(which, 'ends', segment.to, at(1));
}

function checkAgreement(which: string, verb: 'starts' | 'ends', said: Point, found: Point): void {
  if (distance(said, found) > LENGTH_TOLERANCE) {
    throw new OutlineError(
      'bad arc',
      `${which} says it ${verb} at ${printPoint(said)}, but its centre and sweep bring it to ` +
        `${printPoint(found)}; they must agree.`,
    );
  }
}
