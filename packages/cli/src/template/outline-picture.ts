import {
  bounds,
  lengthOf,
  type Outline,
  type Point,
  pointAt,
  type Strip,
} from '@stripwright/strip-geometry';
import type { Box, Mark } from '../drawing/drawing.js';
import { INK, tint } from '../drawing/ink.js';
import { LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { curveName } from '../report/mark-rows.js';
import { type LabelWish, placeLabels, type Stretch } from '../strip-drawing/place-labels.js';
import { TAG_HEIGHT, type Tagged, tag, tagWidth, words } from '../strip-drawing/tag.js';
import type { OutlinePlaces, PlaceOnOutline } from './outline-places.js';
import { TYPE } from './page-format.js';

/** Room kept free round the shape for its tags. */
const ROUND = 10;
const SEAM_MARK = 2.4;
const CAPTION = LINE_HEIGHT * TYPE.body + 0.6;
/** Shapes are drawn at a size that a rule can be laid to. */
const SCALES: readonly (readonly [scale: number, words: string])[] = [
  [1, 'at true size'],
  ...['3/4', '2/3', '1/2', '2/5', '1/3', '1/4', '1/5', '1/6', '1/8', '1/10', '1/20'].map(
    (fraction) => {
      const [over = 1, under = 1] = fraction.split('/').map(Number);
      return [over / under, `at ${fraction} of its size`] as const;
    },
  ),
];

/** The outline that a strip is bent to. */
export interface ShapeToDraw {
  /** From where the strip, or the first of its parts, begins. */
  readonly outline: Outline;
  readonly strip: Strip;
  readonly places: OutlinePlaces;
  /** True for one of several strips that make it together. */
  readonly isPart: boolean;
}

export interface OutlinePicture {
  readonly marks: readonly Mark[];
  readonly height: number;
}

/**
 * The outline with the numbers of the strip, seen from above: at true size where
 * the room holds it, or else smaller by a plain fraction, which is said.
 */
export function drawOutline(shape: ShapeToDraw, room: Box): OutlinePicture {
  const { outline, strip, places, isPart } = shape;
  const { left, right, bottom, top, across, high } = bounds(outline);
  const inner = { width: room.width - 2 * ROUND, height: room.height - CAPTION - 2 * ROUND };
  const largest = Math.min(inner.width / across, inner.height / high);
  const [scale, size] = SCALES.find(([each]) => each <= largest) ?? [
    largest,
    `at ${(largest * 100).toPrecision(2)} % of its size`,
  ];
  const height = Math.min(room.height, CAPTION + 2 * ROUND + high * scale);
  const tagRoom: Box = { ...room, y: room.y + CAPTION, height: height - CAPTION };
  const middle = { x: room.x + room.width / 2, y: tagRoom.y + tagRoom.height / 2 };
  const onPage = ({ x, y }: Point): Point => ({
    x: middle.x + (x - (left + right) / 2) * scale,
    y: middle.y - (y - (bottom + top) / 2) * scale,
  });
  const whole = stretchPoints(outline, 0, Number.POSITIVE_INFINITY).map(onPage);
  const own = stretchPoints(outline, places.from, places.to).map(onPage);
  const seams = isPart ? [places.start, places.end] : [places.start];
  const bars = seams.map((seam) => seamBar(seam, onPage));
  const wishes = [
    ...strip.bends.map(({ number, direction }) => wish(`${number}`, { of: 'bend', direction })),
    ...strip.curves.map(({ direction }, index) =>
      wish(curveName(index + 1), { of: 'curve', direction }),
    ),
  ];
  const at = [...places.bends, ...places.curves];
  const labels = seams.map((place, index) => ({
    place,
    text: isPart ? (index === 0 ? 'square end' : 'far end') : 'seam',
  }));
  const placed = placeLabels(
    [
      ...wishes.map(({ label }, index) =>
        labelWish(at[index] ?? places.start, onPage, tagWidth(label), TAG_HEIGHT),
      ),
      ...labels.map(({ place, text }) =>
        labelWish(place, onPage, textWidth(text) * TYPE.body, LINE_HEIGHT * TYPE.body),
      ),
    ],
    [...sidesOf(whole), ...bars],
    tagRoom,
  );
  const drawn = placed.flatMap((label, index): readonly Mark[] => {
    if (label === undefined) return [];
    const one = wishes[index];
    const text = labels[index - wishes.length]?.text ?? '';
    return [
      tie(label.tie),
      ...(one === undefined
        ? [words('seam-name', text, label.box, TYPE.body)]
        : tag(`shape-${one.tagged.of}`, one.label, one.tagged, label.middle)),
    ];
  });
  const missing = placed.filter((label) => label === undefined).length;
  return {
    height,
    marks: [
      caption(captionText(size, missing), room),
      { kind: 'polygon', role: 'outline', points: whole, fill: tint(1), ...SOFT },
      { kind: 'line', role: 'own-outline', points: own, stroke: INK.text, strokeWidth: 0.6 },
      ...bars.map((points): Mark => {
        return { kind: 'line', role: 'seam', points, stroke: INK.laterCut, strokeWidth: 0.7 };
      }),
      // Ties below everything that has words in it.
      ...drawn.filter(({ kind }) => kind === 'line'),
      ...drawn.filter(({ kind }) => kind !== 'line'),
    ],
  };
}

const SOFT = { stroke: INK.soft, strokeWidth: 0.25 } as const;

function captionText(size: string, missing: number): string {
  return `Outline from above, ${size}${missing === 0 ? '' : `; ${missing} without a number`}`;
}

function caption(text: string, { x, y, width }: Box): Mark {
  const size = Math.min(TYPE.body, width / textWidth(text, true));
  return words('caption', text, { x, y }, size, { bold: true });
}

interface TagWish {
  readonly label: string;
  readonly tagged: Tagged;
}

const wish = (label: string, tagged: Tagged): TagWish => ({ label, tagged });

type ToPage = (point: Point) => Point;

function labelWish(
  { at, away }: PlaceOnOutline,
  onPage: ToPage,
  width: number,
  height: number,
): LabelWish {
  return { at: onPage(at), away: { x: away.x, y: -away.y }, width, height };
}

function tie(points: Stretch): Mark {
  return { kind: 'line', role: 'tie', points, stroke: INK.soft, strokeWidth: 0.2 };
}

/** A short bar across the outline where ends of strips meet. */
function seamBar({ at, away }: PlaceOnOutline, onPage: ToPage): Stretch {
  const { x, y } = onPage(at);
  const [across, down] = [SEAM_MARK * away.x, -SEAM_MARK * away.y];
  return [
    { x: x - across, y: y - down },
    { x: x + across, y: y + down },
  ];
}

const sidesOf = (points: readonly Point[]): readonly Stretch[] =>
  points.map((point, index): Stretch => [point, points[(index + 1) % points.length] ?? point]);

/** Points along part of an outline, near enough together to look like it. */
function stretchPoints({ segments }: Outline, from: number, to: number): readonly Point[] {
  let start = 0;
  return segments.flatMap((segment) => {
    const length = lengthOf(segment);
    const [first, last] = [Math.max(from - start, 0), Math.min(to - start, length)];
    start += length;
    if (first >= last) return [];
    const steps = segment.kind === 'line' ? 1 : Math.max(8, Math.ceil((last - first) / 0.7));
    return Array.from({ length: steps + 1 }, (_, step) =>
      pointAt(segment, first + ((last - first) * step) / steps),
    );
  });
}
