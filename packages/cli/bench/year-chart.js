import { INK } from '../dist/drawing/ink.js';
import { writeSvg } from '../dist/drawing/svg-sink.js';
import { textMark } from '../dist/drawing/text-mark.js';

const [WIDTH, HEIGHT, MARGIN, GAP] = [180, 75, 18, 16];
const SIZE = 3.4;
/** Each habit has its own dashes, and its name at the end of its line. */
const DASHES = [undefined, [1.2, 1.2], [4, 1.5]];
const STROKES = [INK.firstCut, INK.laterCut, INK.soft];

/** Two panels, one above the other: money spent, and offcuts on the rack, order by order. */
export function yearChart(habits) {
  const panels = [
    { title: 'Money spent on sheets, summed up', of: ({ money }) => money },
    { title: 'Offcuts on the rack', of: ({ offcuts }) => offcuts },
  ];
  const marks = panels.flatMap((panel, index) =>
    drawPanel(panel, habits, MARGIN + index * (HEIGHT + GAP)),
  );
  return writeSvg({
    title: 'A year of orders, with and without an offcut rack',
    description:
      'Two line charts over the orders of a year: money spent on sheets, and the number of ' +
      'offcuts on the rack, one line for each habit.',
    page: {
      x: 0,
      y: 0,
      width: WIDTH + 2 * MARGIN + 32,
      height: 2 * HEIGHT + GAP + 2 * MARGIN,
    },
    hatches: [],
    layers: [{ name: 'chart', marks }],
  });
}

function drawPanel({ title, of }, habits, top) {
  const orders = habits[0].steps.length;
  const most = niceAbove(Math.max(1, ...habits.flatMap(({ steps }) => steps.map(of))));
  const x = (order) => MARGIN + (WIDTH * order) / orders;
  const y = (value) => top + HEIGHT - (HEIGHT * value) / most;
  const words = (text, at, anchor = 'start') =>
    textMark({ role: 'label', text, at, size: SIZE, anchor, room: roomAt(at, anchor) });
  const grid = [0, 0.25, 0.5, 0.75, 1].flatMap((share) => [
    line(
      [
        { x: MARGIN, y: y(share * most) },
        { x: MARGIN + WIDTH, y: y(share * most) },
      ],
      { stroke: INK.hatch, strokeWidth: share === 0 ? 0.4 : 0.12 },
    ),
    words(String(share * most), { x: MARGIN - 1.5, y: y(share * most) + 1.1 }, 'end'),
  ]);
  const ticks = [0, 0.25, 0.5, 0.75, 1].map((share) =>
    words(
      String(Math.round(share * orders)),
      { x: x(share * orders), y: top + HEIGHT + 4.5 },
      'middle',
    ),
  );
  const ends = spread(habits.map(({ steps }) => y(of(steps.at(-1)))));
  const lines = habits.flatMap(({ name, steps }, index) => [
    line(
      [{ x: x(0), y: y(0) }, ...steps.map((step, order) => ({ x: x(order + 1), y: y(of(step)) }))],
      { stroke: STROKES[index], strokeWidth: 0.7, dashes: DASHES[index] },
    ),
    words(name, { x: MARGIN + WIDTH + 2, y: ends[index] + 1.1 }),
  ]);
  return [words(title, { x: MARGIN, y: top - 4 }), ...grid, ...ticks, ...lines];
}

const line = (points, { dashes, ...pen }) => ({
  kind: 'line',
  points,
  ...pen,
  ...(dashes === undefined ? {} : { dashes }),
});

function roomAt({ x, y }, anchor) {
  const width = 60;
  const left = { start: x, middle: x - width / 2, end: x - width }[anchor];
  return { x: left, y: y - SIZE, width, height: SIZE * 1.4 };
}

/** Moves labels apart that would lie on each other. */
function spread(places) {
  const order = places.map((_, index) => index).sort((one, other) => places[one] - places[other]);
  const moved = [...places];
  for (let at = 1; at < order.length; at++) {
    moved[order[at]] = Math.max(moved[order[at]], moved[order[at - 1]] + SIZE * 1.3);
  }
  return moved;
}

/** A round number at or above another, that four parts divide well. */
function niceAbove(number) {
  const power = 10 ** Math.floor(Math.log10(number));
  return [1, 2, 4, 8, 10].map((factor) => factor * power).find((nice) => nice >= number);
}
