import { bounds, type Outline, type Point, type Strip } from '@stripwright/strip-geometry';
import type { Box, Mark } from '../drawing/drawing.js';
import { INK, tint } from '../drawing/ink.js';
import { LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { type LabelWish, placeLabels, type Stretch } from '../strip-drawing/place-labels.js';
import { TAG_HEIGHT, type Tagged, tag, tagWidth, words } from '../strip-drawing/tag.js';
import { type Place, type Places, pointsOn } from './places.js';

/** Room kept free round the shape for its tags, millimetres. */
const ROUND = 14;
const SEAM_MARK = 2.6;
const SEAM_SIZE = 2.8;

export interface DrawnShape {
  readonly marks: readonly Mark[];
  /** Millimetres of page for a millimetre of cutter. */
  readonly scale: number;
}

/**
 * The outline as large as the room holds it, its bends numbered and its curves lettered.
 * @throws Error where a tag finds no place to stand
 */
export function drawShape(outline: Outline, strip: Strip, places: Places, room: Box): DrawnShape {
  const { left, right, bottom, top, across, high } = bounds(outline);
  const scale = Math.min((room.width - 2 * ROUND) / across, (room.height - 2 * ROUND) / high);
  const onPage = ({ x, y }: Point): Point => ({
    x: room.x + room.width / 2 + (x - (left + right) / 2) * scale,
    y: room.y + room.height / 2 - (y - (bottom + top) / 2) * scale,
  });
  const points = outline.segments.flatMap(pointsOn).map(onPage);
  const sides = points.map((point, index): Stretch => {
    return [point, points[(index + 1) % points.length] ?? point];
  });
  const tags = [
    ...tagsOf('bend', places.bends, strip.bends),
    ...tagsOf('curve', places.curves, strip.curves),
  ];
  const seam = seamMark(places.seam, onPage);
  return {
    scale,
    marks: [
      {
        kind: 'polygon',
        role: 'outline',
        points,
        fill: tint(1),
        stroke: INK.text,
        strokeWidth: 0.6,
      },
      { kind: 'line', role: 'seam', points: seam, stroke: INK.laterCut, strokeWidth: 0.7 },
      ...drawTags(tags, places.seam, [...sides, seam], onPage, room),
    ],
  };
}

interface PlacedTag {
  readonly place: Place;
  readonly tagged: Tagged;
}

function tagsOf(
  of: Tagged['of'],
  places: readonly Place[],
  runs: readonly Pick<Tagged, 'direction'>[],
): readonly PlacedTag[] {
  return runs.flatMap(({ direction }, index) => {
    const place = places[index];
    return place === undefined ? [] : [{ place, tagged: { of, direction } }];
  });
}

type ToPage = (point: Point) => Point;

function drawTags(
  tags: readonly PlacedTag[],
  seam: Place,
  sides: readonly Stretch[],
  onPage: ToPage,
  room: Box,
): readonly Mark[] {
  const wishes = tags.map(({ place }) => wish(place, onPage, tagWidth(place.label), TAG_HEIGHT));
  const seamWidth = textWidth(seam.label) * SEAM_SIZE;
  const seamWish = wish(seam, onPage, seamWidth, LINE_HEIGHT * SEAM_SIZE);
  const placed = placeLabels([...wishes, seamWish], sides, room);
  const marks = [...tags, undefined].flatMap((one, index): readonly Mark[] => {
    const label = placed[index];
    if (label === undefined) throw new Error(`no room for tag ${one?.place.label ?? 'seam'}`);
    const { box, middle, tie } = label;
    return one === undefined
      ? [tieMark(tie), words('seam-name', seam.label, box, SEAM_SIZE)]
      : [tieMark(tie), ...tag(`shape-${one.tagged.of}`, one.place.label, one.tagged, middle)];
  });
  // Ties below everything that has words in it.
  return [
    ...marks.filter(({ kind }) => kind === 'line'),
    ...marks.filter(({ kind }) => kind !== 'line'),
  ];
}

function wish({ at, away }: Place, onPage: ToPage, width: number, height: number): LabelWish {
  return { at: onPage(at), away: { x: away.x, y: -away.y }, width, height };
}

function tieMark([from, to]: Stretch): Mark {
  return {
    kind: 'line',
    role: 'tie',
    points: [from, to],
    stroke: INK.soft,
    strokeWidth: 0.2,
  };
}

/** A short bar across the outline where the ends of the strip meet. */
function seamMark({ at, away }: Place, onPage: ToPage): Stretch {
  const { x, y } = onPage(at);
  const [across, down] = [SEAM_MARK * away.x, -SEAM_MARK * away.y];
  return [
    { x: x - across, y: y - down },
    { x: x + across, y: y + down },
  ];
}
