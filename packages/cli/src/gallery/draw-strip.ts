import { roundMarks, type Strip } from '@stripwright/strip-geometry';
import type { Box, Mark, Point, RectMark } from '../drawing/drawing.js';
import { INK, tint } from '../drawing/ink.js';
import { BASELINE_DROP, LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { spreadLabels } from '../drawing/spread-labels.js';
import { textMark } from '../drawing/text-mark.js';
import { printBareLength, type Rule } from '../length/print-length.js';
import { ticksUp } from '../length/ticks.js';
import { bendLabel, curveLabel } from './places.js';
import { TAG_HEIGHT, type Tagged, tag, tagWidth, words } from './tag.js';

/** Millimetres of page. */
const TIE = 3.2;
const SIZE = 2.6;
const PITCH = LINE_HEIGHT * SIZE + 0.2;
const TAG_GAP = 0.8;

export interface DrawnStrip {
  readonly marks: readonly Mark[];
  readonly height: number;
}

/** Dashes that tell the lines on a strip apart without colour. */
export const DASHES = { in: 'none', out: [2, 1], hem: [0.4, 0.8] } as const;

/**
 * The flat strip with its hem below, its square end at the left and its tab at
 * the right: tags of bends and curves above, marks from the square end below.
 */
export function drawStrip(strip: Strip, rule: Rule, room: Omit<Box, 'height'>): DrawnStrip {
  const scale = Math.min(1, room.width / strip.length);
  const top = room.y + TAG_HEIGHT + TIE;
  const foot = top + strip.width * scale;
  const x = (along: number): number => room.x + along * scale;
  const body = { x: room.x, y: top, width: strip.length * scale, height: foot - top };
  const hemLine = foot - strip.hem * scale;
  const marked = markedPlaces(strip, rule);
  const longest = Math.max(...marked.map(({ text }) => textWidth(text))) * SIZE;
  return {
    height: foot + TIE + longest + 1 - room.y,
    marks: [
      rect('strip', body, INK.paper),
      ...strip.curves.map(({ from, to }) =>
        formed({ ...body, x: x(from), width: (to - from) * scale }),
      ),
      ...tabMarks(strip, body, scale),
      line('hem-line', [at(body.x, hemLine), at(body.x + body.width, hemLine)], DASHES.hem),
      words(
        'hem-name',
        'hem',
        at(body.x + 0.8, hemLine + (foot - hemLine - LINE_HEIGHT * 2.2) / 2),
        2.2,
      ),
      ...strip.bends.map((bend) =>
        line(
          `bend-${bend.direction}`,
          [at(x(bend.at), top), at(x(bend.at), foot)],
          DASHES[bend.direction],
        ),
      ),
      { kind: 'rect', role: 'strip-edge', box: body, stroke: INK.text, strokeWidth: 0.5 },
      ...tagRow(strip, x, top, room),
      ...markRow(marked, x, foot, room),
    ],
  };
}

const at = (x: number, y: number): Point => ({ x, y });

const rect = (role: string, box: Box, fill: string): RectMark => ({
  kind: 'rect',
  role,
  box,
  fill,
});

function formed(box: Box): Mark {
  return { ...rect('formed', box, tint(1)), stroke: INK.soft, strokeWidth: 0.15 };
}

function line(role: string, points: readonly Point[], dashes: readonly number[] | 'none'): Mark {
  const pen = { stroke: INK.text, strokeWidth: 0.35 };
  return { kind: 'line', role, points, ...pen, ...(dashes === 'none' ? {} : { dashes }) };
}

function tabMarks(strip: Strip, body: Box, scale: number): readonly Mark[] {
  const width = strip.tab * scale;
  if (width === 0) return [];
  const box = { ...body, x: body.x + body.width - width, width };
  const name = textWidth('tab') * 2.6;
  return [
    rect('tab', box, INK.scrapGround),
    words('tab-name', 'tab', at(box.x + (width - name) / 2, body.y + 0.6), 2.6),
  ];
}

interface StripTag {
  readonly label: string;
  readonly tagged: Tagged;
  readonly along: number;
}

/** Tags above the strip, spread along it where they would touch. */
function tagRow(
  strip: Strip,
  x: (along: number) => number,
  top: number,
  room: Omit<Box, 'height'>,
): readonly Mark[] {
  const tags: readonly StripTag[] = [
    ...strip.bends.map(({ at, direction }, index): StripTag => {
      return { label: bendLabel(index), tagged: { of: 'bend', direction }, along: at };
    }),
    ...strip.curves.map(({ from, to, direction }, index): StripTag => {
      return {
        label: curveLabel(index),
        tagged: { of: 'curve', direction },
        along: (from + to) / 2,
      };
    }),
  ].sort((one, other) => one.along - other.along);
  const pitch = Math.max(...tags.map(({ label }) => tagWidth(label)), 0) + TAG_GAP;
  const centres = spreadLabels(
    tags.map(({ along }) => x(along)),
    pitch,
    room.x - pitch / 2,
    room.x + room.width + pitch / 2,
  );
  return tags.flatMap(({ label, tagged, along }, index) => {
    const centre = centres[index] ?? x(along);
    const middle = at(centre, room.y + TAG_HEIGHT / 2);
    const tie: Mark = {
      kind: 'line',
      role: 'tie',
      points: [at(centre, room.y + TAG_HEIGHT), at(x(along), top)],
      stroke: INK.soft,
      strokeWidth: 0.2,
    };
    return [tie, ...tag(`strip-${tagged.of}`, label, tagged, middle)];
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
