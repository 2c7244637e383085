import { toRadians } from '../../angle.js';
import type { Point } from '../../outline.js';
import { point, polar } from '../../point.js';
import { arc, arcBetween, line } from '../../segment.js';
import { apex } from '../apex.js';
import {
  halfCircle,
  type LetterOutline,
  levelEnd,
  levelEndAt,
  openCrotch,
  STROKE,
  strokeAlong,
} from './stroke.js';

const HALF = STROKE / 2;

/** Half the width of C, G and O, whose ends are half circles. */
const BOWL = 0.42;
/** Where the ends of C, G and S are cut, seen from the middle of their curve. */
const OPEN = toRadians(28);

/** The outer outline alone. */
export function letterB(): LetterOutline {
  const [middle, lower, upper] = [0.36, 0.3, 0.27];
  const [below, above] = [point(middle, lower), point(middle, 1 - upper)];
  // The bowls' circles meet in the waist, to the right of the way up.
  const waist = apex(above, upper, below, lower);
  return [
    line(point(0, 0), point(middle, 0)),
    arcBetween(point(middle, 0), waist, below, 'anticlockwise'),
    arcBetween(waist, point(middle, 1), above, 'anticlockwise'),
    line(point(middle, 1), point(0, 1)),
    line(point(0, 1), point(0, 0)),
  ];
}

export function letterC(): LetterOutline {
  const radius = BOWL - HALF;
  const [above, below] = [point(BOWL, 1 - BOWL), point(BOWL, BOWL)];
  const [top, bottom] = [point(HALF, above.y), point(HALF, below.y)];
  return strokeAlong([
    arcBetween(polar(above, radius, OPEN), top, above, 'anticlockwise'),
    line(top, bottom),
    arcBetween(bottom, polar(below, radius, -OPEN), below, 'anticlockwise'),
  ]);
}

/** The outer outline alone. */
export function letterD(): LetterOutline {
  const straightPart = 0.3;
  return [
    line(point(0, 0), point(straightPart, 0)),
    halfCircle(straightPart, 0, 1),
    line(point(straightPart, 1), point(0, 1)),
    line(point(0, 1), point(0, 0)),
  ];
}

export function letterG(): LetterOutline {
  const [width, inner, barTop, barLeft] = [2 * BOWL, BOWL - STROKE, 0.53, 0.43];
  const [above, below] = [point(BOWL, 1 - BOWL), point(BOWL, BOWL)];
  const barFoot = barTop - STROKE;
  const innerX = BOWL + Math.sqrt(inner ** 2 - (BOWL - barFoot) ** 2);
  const [outerEnd, innerEnd] = [polar(above, BOWL, OPEN), polar(above, inner, OPEN)];
  return [
    line(point(width, BOWL), point(width, barTop)),
    line(point(width, barTop), point(barLeft, barTop)),
    line(point(barLeft, barTop), point(barLeft, barFoot)),
    line(point(barLeft, barFoot), point(innerX, barFoot)),
    arcBetween(point(innerX, barFoot), point(STROKE, BOWL), below, 'clockwise'),
    line(point(STROKE, BOWL), point(STROKE, 1 - BOWL)),
    arcBetween(point(STROKE, 1 - BOWL), innerEnd, above, 'clockwise'),
    line(innerEnd, outerEnd),
    arcBetween(outerEnd, point(0, 1 - BOWL), above, 'anticlockwise'),
    line(point(0, 1 - BOWL), point(0, BOWL)),
    arcBetween(point(0, BOWL), point(width, BOWL), below, 'anticlockwise'),
  ];
}

export function letterJ(): LetterOutline {
  const [width, hook] = [0.64, 0.1];
  const bowl = width / 2;
  const [stem, end] = [width - HALF, HALF];
  return strokeAlong([
    line(point(stem, 1), point(stem, bowl)),
    arcBetween(point(stem, bowl), point(end, bowl), point(bowl, bowl), 'clockwise'),
    line(point(end, bowl), point(end, bowl + hook)),
  ]);
}

/** The outer outline alone. */
export function letterO(): LetterOutline {
  const [width, top] = [2 * BOWL, 1 - BOWL];
  return [
    line(point(width, BOWL), point(width, top)),
    arcBetween(point(width, top), point(0, top), point(BOWL, top), 'anticlockwise'),
    line(point(0, top), point(0, BOWL)),
    arcBetween(point(0, BOWL), point(width, BOWL), point(BOWL, BOWL), 'anticlockwise'),
  ];
}

/** The outer outline alone. */
export function letterP(): LetterOutline {
  const [middle, foot] = [0.36, 0.4];
  return [
    line(point(0, 0), point(STROKE, 0)),
    line(point(STROKE, 0), point(STROKE, foot)),
    line(point(STROKE, foot), point(middle, foot)),
    halfCircle(middle, foot, 1),
    line(point(middle, 1), point(0, 1)),
    line(point(0, 1), point(0, 0)),
  ];
}

/** The outer outline alone: a circle on a slanting tail. */
export function letterQ(): LetterOutline {
  const radius = 0.44;
  const middle = point(radius, 1 - radius);
  const direction = toRadians(-55);
  const tailEnd = point(middle.x - middle.y / Math.tan(direction), 0);
  const half = levelEndAt(Math.cos(direction), -Math.sin(direction)) / 2;
  const leave = Math.asin(HALF / radius);
  const left = polar(middle, radius, direction - leave);
  const right = polar(middle, radius, direction + leave);
  const [leftFoot, rightFoot] = [point(tailEnd.x - half, 0), point(tailEnd.x + half, 0)];
  return [
    line(left, leftFoot),
    line(leftFoot, rightFoot),
    line(rightFoot, right),
    arcBetween(right, left, middle, 'anticlockwise'),
  ];
}

/** The outer outline alone. */
export function letterR(): LetterOutline {
  const [middle, armpit, width] = [0.38, 0.4, 0.74];
  const end = levelEnd(width - STROKE, armpit);
  const bowl = point(middle, (1 + armpit) / 2);
  const radius = (1 - armpit) / 2;
  const foot = point(width - end, 0);
  const [first, second] = openCrotch(point(STROKE, 0), point(STROKE, armpit), foot, 'level');
  const hip = whereItMeets(point(width, 0), point(STROKE + end, armpit), bowl, radius);
  return [
    line(point(0, 0), point(STROKE, 0)),
    line(point(STROKE, 0), first),
    line(first, second),
    line(second, foot),
    line(foot, point(width, 0)),
    line(point(width, 0), hip),
    arcBetween(hip, point(middle, 1), bowl, 'anticlockwise'),
    line(point(middle, 1), point(0, 1)),
    line(point(0, 1), point(0, 0)),
  ];
}

/** Where the straight way from `from` toward `to` first meets a circle. */
function whereItMeets(from: Point, to: Point, centre: Point, radius: number): Point {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const [x, y] = [centre.x - from.x, centre.y - from.y];
  const ahead = x * Math.cos(angle) + y * Math.sin(angle);
  const beside = y * Math.cos(angle) - x * Math.sin(angle);
  return polar(from, ahead - Math.sqrt(radius ** 2 - beside ** 2), angle);
}

/** Two bowls that share the stroke in the middle. */
export function letterS(): LetterOutline {
  const level = 0.1;
  // Four radii and the widths of two half strokes make the height.
  const radius = (1 - STROKE) / 4;
  const [left, right] = [radius + HALF, radius + HALF + level];
  const [above, below] = [1 - HALF - radius, HALF + radius];
  const start = polar(point(right, above), radius, OPEN);
  const end = polar(point(left, below), radius, Math.PI + OPEN);
  const [head, foot] = [1 - HALF, HALF];
  return strokeAlong([
    arcBetween(start, point(right, head), point(right, above), 'anticlockwise'),
    line(point(right, head), point(left, head)),
    arcBetween(point(left, head), point(left, 0.5), point(left, above), 'anticlockwise'),
    line(point(left, 0.5), point(right, 0.5)),
    arcBetween(point(right, 0.5), point(right, foot), point(right, below), 'clockwise'),
    line(point(right, foot), point(left, foot)),
    arcBetween(point(left, foot), end, point(left, below), 'clockwise'),
  ]);
}

export function letterU(): LetterOutline {
  const width = 0.78;
  const bowl = width / 2;
  const [left, right] = [HALF, width - HALF];
  return strokeAlong([
    line(point(left, 1), point(left, bowl)),
    arc(point(left, bowl), point(bowl, bowl), Math.PI),
    line(point(right, bowl), point(right, 1)),
  ]);
}
