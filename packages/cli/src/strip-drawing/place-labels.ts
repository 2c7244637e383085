import { grown } from '../drawing/box.js';
import type { Box, Point } from '../drawing/drawing.js';

/** A label that wants to stand near a point. Page coordinates, millimetres. */
export interface LabelWish {
  readonly at: Point;
  /** Unit vector to where it would best stand. */
  readonly away: Point;
  readonly width: number;
  readonly height: number;
}

export interface PlacedLabel {
  readonly box: Box;
  readonly middle: Point;
  /** From the point to the edge of the label. */
  readonly tie: Stretch;
}

export type Stretch = readonly [Point, Point];

/** Distances to try from the point to the edge of the label, and turns from the wanted way. */
const REACHES = [1.6, 2.4, 3.4, 4.6, 6, 8, 10.5, 13.5, 17, 21];
const TURNS = [0, 20, -20, 40, -40, 60, -60, 80, -80, 105, -105, 130, -130, 155, -155, 180];
/** What a half turn costs, in millimetres of distance. */
const TURN_COST = 6;
const CLEAR = 0.5;

interface Try {
  readonly reach: number;
  readonly turn: number;
}

const TRIES: readonly Try[] = REACHES.flatMap((reach) =>
  TURNS.map((degrees) => ({ reach, turn: (degrees * Math.PI) / 180 })),
).sort((one, other) => cost(one) - cost(other));

function cost({ reach, turn }: Try): number {
  return reach + (Math.abs(turn) / Math.PI) * TURN_COST;
}

/**
 * Puts each label as near to its wanted place as it can stand inside the room,
 * clear of the lines, of the labels before it and of their ties. A label that
 * cannot stand clear anywhere is left out as `undefined`.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  lines: readonly Stretch[],
  room: Box,
): readonly (PlacedLabel | undefined)[] {
  const placed: PlacedLabel[] = [];
  return wishes.map((wish) => {
    const label = TRIES.map((each) => labelAt(wish, each)).find(
      ({ box, tie }) =>
        inside(box, room) &&
        !lines.some((line) => meets(line, grown(box, CLEAR))) &&
        !placed.some(
          (other) =>
            overlap(box, grown(other.box, CLEAR)) ||
            meets(tie, grown(other.box, CLEAR)) ||
            meets(other.tie, grown(box, CLEAR)),
        ),
    );
    if (label !== undefined) placed.push(label);
    return label;
  });
}

function labelAt({ at, away, width, height }: LabelWish, { reach, turn }: Try): PlacedLabel {
  const way = {
    x: away.x * Math.cos(turn) - away.y * Math.sin(turn),
    y: away.x * Math.sin(turn) + away.y * Math.cos(turn),
  };
  // The edge of the label lies where its outline is met on the way to the point.
  const half = Math.min(width / 2 / Math.abs(way.x || 1e-9), height / 2 / Math.abs(way.y || 1e-9));
  const middle = { x: at.x + way.x * (reach + half), y: at.y + way.y * (reach + half) };
  const box = { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
  const edge = { x: at.x + way.x * reach, y: at.y + way.y * reach };
  return { box, middle, tie: [at, edge] };
}

function inside(box: Box, room: Box): boolean {
  return (
    box.x >= room.x &&
    box.y >= room.y &&
    box.x + box.width <= room.x + room.width &&
    box.y + box.height <= room.y + room.height
  );
}

function overlap(one: Box, other: Box): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}

/** Whether any of a straight stretch lies in a box: what is left of it between the box's sides. */
export function meets([from, to]: Stretch, box: Box): boolean {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const sides: readonly (readonly [slope: number, room: number])[] = [
    [-x, from.x - box.x],
    [x, box.x + box.width - from.x],
    [-y, from.y - box.y],
    [y, box.y + box.height - from.y],
  ];
  let [start, end] = [0, 1];
  for (const [slope, room] of sides) {
    if (slope === 0 && room < 0) return false;
    if (slope < 0) start = Math.max(start, room / slope);
    if (slope > 0) end = Math.min(end, room / slope);
  }
  return start <= end;
}
