import type { Area, Block } from '../drawing/block.js';
import type { Box, Mark, Pen } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { ASCENT, LINE_HEIGHT, shorten, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import { cutPen } from './cut-lines.js';
import type { CutMap } from './cut-map.js';
import { TYPE, type Unit } from './paper.js';
import { hatchId, KEEP_WORDS, SCRAP_WORD } from './remnants.js';
import type { Strips } from './strips.js';

interface Entry {
  readonly words: string;
  readonly sample: (box: Box, unit: Unit) => Mark;
}

const SAMPLE = 8;
const GAP = 1.2;
const APART = 4;

/** What the lines and hatchings mean; only those that the map shows. */
export function drawKey(map: CutMap, strips: Strips, area: Area): Block {
  const { unit } = area;
  const size = TYPE.small * unit;
  const line = LINE_HEIGHT * size;
  const step = line + 0.5 * unit;
  let left = area.left;
  let top = area.top;
  const marks = entries(map, strips).flatMap(({ words, sample }) => {
    const before = (SAMPLE + GAP) * unit;
    const text = shorten(words, (area.width - before) / size);
    const width = before + textWidth(text) * size;
    if (left > area.left && left + width > area.left + area.width) {
      left = area.left;
      top += step;
    }
    const box = { x: left, y: top + 0.15 * line, width: SAMPLE * unit, height: 0.7 * line };
    const at = { x: left + before, y: top + ASCENT * size };
    const room = { x: area.left, y: top, width: area.width, height: line };
    left += width + APART * unit;
    return [sample(box, unit), textMark({ role: 'key', text, at, size, room })];
  });
  return marks.length === 0 ? { marks, height: 0 } : { marks, height: top + line - area.top };
}

function entries(map: CutMap, strips: Strips): readonly Entry[] {
  const side = strips.cutsRun === 'x' ? 'lower' : 'left';
  const edge = strips.start > 0 ? `trimmed ${side}` : side;
  const stages = new Set(map.cuts.map(({ stage }) => stage));
  const remnants = new Set(map.remnants.map(({ keep }) => keep));
  return [
    ...(stages.has(0)
      ? [{ words: 'trims of the edges, before all others', sample: ruled(0) }]
      : []),
    ...(stages.has(1)
      ? [
          {
            words: `first cuts, with the distance from the ${edge} edge; the numbers of cuts tell their order`,
            sample: ruled(1),
          },
        ]
      : []),
    ...(stages.has(2) ? [{ words: 'second cuts, across the strips', sample: ruled(2) }] : []),
    ...(stages.has(3) ? [{ words: thirdCuts(map), sample: ruled(3) }] : []),
    ...([...stages].some((stage) => stage > 3)
      ? [{ words: laterCuts(map), sample: ruled(4) }]
      : []),
    ...(remnants.has(true) ? [{ words: KEEP_WORDS, sample: hatched(map.number, true) }] : []),
    ...(remnants.has(false) ? [{ words: SCRAP_WORD, sample: hatched(map.number, false) }] : []),
  ];
}

/** The last of the stages trims pieces to size; free cutting has no last one. */
function thirdCuts({ stages = 2 }: CutMap): string {
  switch (stages) {
    case 2:
      return 'third cuts, to trim';
    case 3:
      return 'third cuts, across what the second part off';
    case 'free':
      return 'third cuts';
  }
}

const laterCuts = ({ stages }: CutMap): string =>
  stages === 3 ? 'fourth cuts, to trim' : 'later cuts, each across what it lies in';

const ruled =
  (stage: number) =>
  (box: Box, unit: Unit): Mark => ({
    kind: 'line',
    role: 'key-line',
    points: [
      { x: box.x, y: box.y + box.height / 2 },
      { x: box.x + box.width, y: box.y + box.height / 2 },
    ],
    ...(cutPen(stage, unit) satisfies Pen),
  });

const hatched =
  (layout: number, keep: boolean) =>
  (box: Box, unit: Unit): Mark => ({
    kind: 'rect',
    role: 'key-hatch',
    box,
    fill: `url(#${hatchId(layout, keep)})`,
    stroke: INK.soft,
    strokeWidth: 0.15 * unit,
  });
