import { type Area, type Block, paragraph, stack } from '../drawing/block.js';
import type { Mark, Point } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import type { Rule } from '../length/print-length.js';
import { CUTTING_CAUTIONS } from '../report/cautions.js';
import { DASHES } from '../strip-drawing/pattern-marks.js';
import { TAG_HEIGHT, type Tagged, tag, tagWidth, words } from '../strip-drawing/tag.js';

const SIZE = 2.6;
const SAMPLE = 7;
const GAP = 1.2;
const APART = 5;

interface Entry {
  readonly words: string;
  readonly tag?: readonly [label: string, of: Tagged['of'], direction: Tagged['direction']];
  readonly dashes?: readonly number[] | 'none';
}

const ENTRIES: readonly Entry[] = [
  { words: 'bend in, toward the cookie', tag: ['1', 'bend', 'in'], dashes: DASHES.in },
  { words: 'bend out, away from it', tag: ['1', 'bend', 'out'], dashes: DASHES.out },
  { words: 'curve formed in', tag: ['a', 'curve', 'in'] },
  { words: 'curve formed out', tag: ['a', 'curve', 'out'] },
  { words: 'hem line', dashes: DASHES.hem },
];

const UNITS: Readonly<Record<Rule['units'], string>> = { in: 'inches', mm: 'millimetres' };

/** What tags and lines mean, how the figures are to be read, and what to take care of. */
export function drawKey(rule: Rule, area: Area): Block {
  const middle = area.top + TAG_HEIGHT / 2;
  let left = area.left;
  const marks = ENTRIES.flatMap((entry): readonly Mark[] => {
    const sample = drawSample(entry, { x: left, y: middle });
    const at = { x: left + sample.width + GAP, y: middle - (LINE_HEIGHT * SIZE) / 2 };
    left = at.x + textWidth(entry.words) * SIZE + APART;
    return [...sample.marks, words('key', entry.words, at, SIZE)];
  });
  const top = area.top + TAG_HEIGHT + GAP;
  const text =
    `Marks run from the square end, in ${UNITS[rule.units]}. Degrees are those bent through: ` +
    '90 is square. Marks are rounded; bend to the degrees under "fold to", and form each half of a ' +
    'curve through its own, and the ends meet. The radius is that of the cookie. The strip is seen from outside the cutter, ' +
    'its hem above; the short cuts into the hem relieve it on tight curves.';
  const below = stack({ ...area, top }, GAP / 2, [
    (place) => paragraph(place, 'note', text, SIZE),
    (place) => paragraph(place, 'caution', CUTTING_CAUTIONS.join(' '), SIZE),
  ]);
  return { marks: [...marks, ...below.marks], height: top + below.height - area.top };
}

interface Sample {
  readonly marks: readonly Mark[];
  readonly width: number;
}

function drawSample({ tag: tagged, dashes }: Entry, { x, y }: Point): Sample {
  const [label, of, direction] = tagged ?? [''];
  const named = of !== undefined && direction !== undefined;
  const tagSpace = named ? tagWidth(label) : 0;
  const middle = { x: x + tagSpace / 2, y };
  const tags = named ? tag('key-tag', label, { of, direction }, middle) : [];
  if (dashes === undefined) return { marks: tags, width: tagSpace };
  const start = x + tagSpace + (tagSpace > 0 ? GAP : 0);
  const sample: Mark = {
    kind: 'line',
    points: [
      { x: start, y },
      { x: start + SAMPLE, y },
    ],
    stroke: INK.text,
    strokeWidth: 0.35,
    ...(dashes === 'none' ? {} : { dashes }),
  };
  return { marks: [...tags, sample], width: start + SAMPLE - x };
}
