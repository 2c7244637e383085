import { paragraph } from '../drawing/block.js';
import type { Mark, Point } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT } from '../drawing/measure-text.js';
import { words } from '../strip-drawing/tag.js';
import { CHECK_BAR, CHECK_SQUARE, TYPE } from './page-format.js';

const LINE = { stroke: INK.text, strokeWidth: 0.25 } as const;
const TICK = 2;
const BAR_TICK = 2.6;
const INSET = 3;
const BAR_BELOW = 3;

export const CHECK_HEIGHT = CHECK_SQUARE + BAR_BELOW + BAR_TICK + LINE_HEIGHT * TYPE.small;
export const CHECK_WIDTH = CHECK_BAR + 0.4;

/**
 * A square of 50 mm, its sides ticked in centimetres, and below it a bar of 2 in, ticked in
 * quarters: a rule laid to them tells whether a page was printed at its size.
 */
export function drawCheckMarks(corner: Point): readonly Mark[] {
  const box = { ...corner, width: CHECK_SQUARE, height: CHECK_SQUARE };
  const ticks = [1, 2, 3, 4].flatMap((ten): readonly Mark[] => [
    line('check-tick', [corner.x + 10 * ten, corner.y], [0, TICK]),
    line('check-tick', [corner.x, corner.y + 10 * ten], [TICK, 0]),
  ]);
  const below = corner.y + CHECK_SQUARE + BAR_BELOW;
  const quarters = Array.from({ length: 9 }, (_, quarter): Mark => {
    const long = quarter % 4 === 0 ? BAR_TICK : BAR_TICK / 2;
    const x = corner.x + (quarter * CHECK_BAR) / 8;
    return line('check-bar-tick', [x, below + BAR_TICK], [0, -long]);
  });
  const text =
    'Check with a rule before use: this square is 50 mm each way, the bar below it 2 in. ' +
    'If not, print again at 100 %, "actual size", never fitted to the page.';
  const room = { left: corner.x + INSET + 1, top: corner.y + INSET, unit: 1 };
  return [
    { kind: 'rect', role: 'check-square', box, ...LINE },
    ...ticks,
    ...paragraph({ ...room, width: CHECK_SQUARE - 2 * INSET - 1 }, 'check', text, TYPE.small).marks,
    line('check-bar', [corner.x, below + BAR_TICK], [CHECK_BAR, 0]),
    ...quarters,
    words('check', '2 in', { x: corner.x, y: below + BAR_TICK }, TYPE.small),
  ];
}

function line(
  role: string,
  [x, y]: readonly [number, number],
  by: readonly [number, number],
): Mark {
  return {
    kind: 'line',
    role,
    points: [
      { x, y },
      { x: x + by[0], y: y + by[1] },
    ],
    ...LINE,
  };
}
