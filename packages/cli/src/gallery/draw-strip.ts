import { flatPattern, roundMarks, type Strip } from '@stripwright/strip-geometry';
import type { Box, Mark, Point } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { BASELINE_DROP, LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { spreadLabels } from '../drawing/spread-labels.js';
import { textMark } from '../drawing/text-mark.js';
import { printBareLength, type Rule } from '../length/print-length.js';
import { ticksUp } from '../length/ticks.js';
import { patternMarks } from '../strip-drawing/pattern-marks.js';
import { TAG_HEIGHT, type Tagged, tag, tagWidth } from '../strip-drawing/tag.js';
import { bendLabel, curveLabel } from './places.js';

/** Millimetres of page. */
const TIE = 3.2;
const SIZE = 2.6;
const PITCH = LINE_HEIGHT * SIZE + 0.2;
const TAG_GAP = 0.8;

export interface DrawnStrip {
  readonly marks: readonly Mark[];
  readonly height: number;
}

/**
 * The flat strip with its hem above, its square end at the left and its tab at
 * the right: tags of bends and curves above, marks from the square end below.
 */
export function drawStrip(strip: Strip, rule: Rule, room: Omit<Box, 'height'>): DrawnStrip {
  const scale = Math.min(1, room.width / strip.length);
  const top = room.y + TAG_HEIGHT + TIE;
  const foot = top + strip.width * scale;
  const x = (along: number): number => room.x + along * scale;
  const marked = markedPlaces(strip, rule);
  const longest = Math.max(...marked.map(({ text }) => textWidth(text))) * SIZE;
  const pattern = flatPattern(strip);
  const onPage = (place: Point): Point => at(x(place.x), top + place.y * scale);
  const bendHeads = pattern.bends.map(({ line }) => onPage(line.from));
  const curveHeads = strip.curves.map(({ from, to }) => at(x((from + to) / 2), top));
  return {
    height: foot + TIE + longest + 1 - room.y,
    marks: [
      ...patternMarks(strip, pattern, onPage),
      ...tabName(strip, onPage),
      ...tagRow(tagsOf(strip, bendHeads, curveHeads), room),
      ...markRow(marked, x, foot, room),
    ],
  };
}

const at = (x: number, y: number): Point => ({ x, y });

function tabName({ tab, length, width, hem }: Strip, onPage: (place: Point) => Point) {
  if (tab === 0) return [];
  const [from, to] = [onPage(at(length - tab, hem)), onPage(at(length, width))];
  const room: Box = { x: from.x, y: from.y, width: to.x - from.x, height: to.y - from.y };
  const middle = at(room.x + room.width / 2, room.y + room.height / 2 + BASELINE_DROP * SIZE);
  const place = { at: middle, anchor: 'middle', room } as const;
  return [textMark({ role: 'tab-name', text: 'tab', size: SIZE, ...place })];
}

interface StripTag {
  readonly label: string;
  readonly tagged: Tagged;
  /** What it is tied to. */
  readonly head: Point;
}

function tagsOf(
  { bends, curves }: Strip,
  bendHeads: readonly Point[],
  curveHeads: readonly Point[],
): readonly StripTag[] {
  const tags = (
    of: Tagged['of'],
    runs: readonly Pick<Tagged, 'direction'>[],
    heads: readonly Point[],
    labelOf: (index: number) => string,
  ) =>
    heads.flatMap((head, index): readonly StripTag[] => {
      const direction = runs[index]?.direction;
      return direction === undefined
        ? []
        : [{ label: labelOf(index), tagged: { of, direction }, head }];
    });
  return [
    ...tags('bend', bends, bendHeads, bendLabel),
    ...tags('curve', curves, curveHeads, curveLabel),
  ].sort((one, other) => one.head.x - other.head.x);
}

/** Tags above the strip, spread along it where they would touch. */
function tagRow(tags: readonly StripTag[], room: Omit<Box, 'height'>): readonly Mark[] {
  const pitch = Math.max(...tags.map(({ label }) => tagWidth(label)), 0) + TAG_GAP;
  const centres = spreadLabels(
    tags.map(({ head }) => head.x),
    pitch,
    room.x - pitch / 2,
    room.x + room.width + pitch / 2,
  );
  return tags.flatMap(({ label, tagged, head }, index) => {
    const centre = centres[index] ?? head.x;
    const tie: Mark = {
      kind: 'line',
      role: 'tie',
      points: [at(centre, room.y + TAG_HEIGHT), at(head.x, room.y + TAG_HEIGHT + TIE), head],
      stroke: INK.soft,
      strokeWidth: 0.2,
    };
    return [tie, ...tag(`strip-${tagged.of}`, label, tagged, at(centre, room.y + TAG_HEIGHT / 2))];
  });
}

interface MarkedPlace {
  readonly along: number;
  readonly text: string;
}

/**
 * Both ends, the bends, and the ends of curves and of the tab, as read off the
 * rule. An end that lies in a bend has the bend's mark.
 */
function markedPlaces(strip: Strip, rule: Rule): readonly MarkedPlace[] {
  const ends = [
    ...strip.curves.flatMap(({ from, to }) => [from, to]),
    ...(strip.tab > 0 ? [strip.length - strip.tab] : []),
  ].filter((end) => end > 0 && !strip.bends.some(({ from, to }) => near(end, from, to)));
  const places = [0, ...strip.bends.map((bend) => bend.at), ...ends].sort((a, b) => a - b);
  const marks = roundMarks(places, rule.mark);
  const cutAt = ticksUp(strip.length, rule.mark) * rule.mark;
  const marked = [
    ...places.map((along, index) => {
      return { along, text: printBareLength(marks[index] ?? along, rule) };
    }),
    { along: strip.length, text: printBareLength(cutAt, rule) },
  ];
  return marked.filter(({ text }, index) => text !== marked[index - 1]?.text);
}

/** Hundredths of a millimetre are nothing to a hand. */
const near = (end: number, from: number, to: number): boolean =>
  end >= from - 0.01 && end <= to + 0.01;

/** Marks from the square end below the strip, reading up, spread where they would touch. */
function markRow(
  marked: readonly MarkedPlace[],
  x: (along: number) => number,
  foot: number,
  room: Omit<Box, 'height'>,
): readonly Mark[] {
  const centres = spreadLabels(
    marked.map(({ along }) => x(along)),
    PITCH,
    room.x - PITCH / 2,
    room.x + room.width + PITCH / 2,
  );
  return marked.flatMap(({ along, text }, index): readonly Mark[] => {
    const centre = centres[index] ?? x(along);
    const width = textWidth(text) * SIZE;
    const place = at(centre + BASELINE_DROP * SIZE, foot + TIE + 0.4 + width);
    const box = { x: centre - PITCH / 2, y: foot + TIE, width: PITCH, height: width + 1 };
    return [
      {
        kind: 'line',
        role: 'tie',
        points: [at(x(along), foot), at(centre, foot + TIE)],
        stroke: INK.soft,
        strokeWidth: 0.2,
      },
      textMark({ role: 'mark', text, at: place, size: SIZE, room: box, upright: true }),
    ];
  });
}
