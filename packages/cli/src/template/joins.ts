import type { Strip } from '@stripwright/strip-geometry';
import type { Box, Mark, Point } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { inMiddle } from './in-middle.js';
import { OVERLAP, STRIP_LEFT, TYPE } from './page-format.js';
import { shownBox, type Window } from './window.js';

const PEN = { stroke: INK.text, strokeWidth: 0.3, dashes: [4, 1, 1, 1] } as const;
/** How far a line runs on beside the strip, so that it can be laid on its fellow. */
const REACH = STRIP_LEFT - 0.5;
const NAME = LINE_HEIGHT * TYPE.body;
/** From a join to its name. */
const OFF = (OVERLAP - NAME) / 2;

/** Joins are numbered along the strip, and lettered across it: the same on both pages that they are on. */
export const joinName = (number: number): string => `join ${number}`;
export const sideJoinName = (number: number): string => `join ${String.fromCharCode(64 + number)}`;

/** The lines where this page is laid on others, each with its name in what overlaps. */
export function drawJoins({ length, width: wide }: Strip, window: Window): readonly Mark[] {
  const { x, y, width, height } = shownBox(window);
  const { along, across, row, column } = window;
  const level = (at: number, number: number, nameTop: number): readonly Mark[] => [
    line('join', { x: x - REACH, y: at }, { x: x + width + 3, y: at }),
    ...named(joinName(number), { x, y: nameTop, width, height: NAME }, false),
  ];
  const upright = (at: number, number: number, nameLeft: number): readonly Mark[] => [
    line('side-join', { x: at, y: y - OVERLAP / 2 }, { x: at, y: y + height + OVERLAP / 2 }),
    ...named(sideJoinName(number), { x: nameLeft, y, width: NAME, height }, true),
  ];
  return [
    ...(along.from > 0 ? level(y, row, y - OFF - NAME) : []),
    ...(along.to < length ? level(y + height, row + 1, y + height + OFF) : []),
    ...(across.from > 0 ? upright(x, column, x - NAME - 0.5) : []),
    ...(across.to < wide ? upright(x + width, column + 1, x + width + 0.5) : []),
  ];
}

function line(role: string, from: Point, to: Point): Mark {
  return { kind: 'line', role, points: [from, to], ...PEN };
}

function named(name: string, box: Box, upright: boolean): readonly Mark[] {
  const long = (textWidth(name) + 0.6) * TYPE.body;
  const size = upright ? { width: NAME, height: long } : { width: long, height: NAME };
  const ground: Box = {
    x: box.x + (box.width - size.width) / 2,
    y: box.y + (box.height - size.height) / 2,
    ...size,
  };
  return [
    { kind: 'rect', role: 'join-ground', box: ground, fill: INK.paper },
    inMiddle('join-name', name, ground, upright),
  ];
}
