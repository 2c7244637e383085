import { toDegrees, toRadians } from '../angle.js';
import type { BendRule } from '../bend-rules/bend-rule.js';
import type { CurveRun } from '../develop.js';
import type { Places } from '../marks/places.js';
import type { Point } from '../outline.js';
import { minus, point, turnedAbout } from '../point.js';
import { headingAt, pointAt } from '../segment.js';
import type { SizeFace } from '../strip.js';
import { turnsOfCurve } from './turns-of-curve.js';

/** Into how many chords a curve is divided: an even number, so that one joint is its middle. */
const CHORDS = 16;

/** What turns when a strip is folded: a bend, or one half of a curve. */
export type Turn =
  | { readonly kind: 'bend'; readonly place: number; readonly drawn: number }
  | {
      readonly kind: 'half';
      readonly stretch: number;
      readonly half: 0 | 1;
      /** Radians that this half of the curve turns through as drawn, with the joint at its end. */
      readonly drawn: number;
    };

/** A strip made ready for folding by computation. */
export interface Chain {
  readonly places: Places;
  readonly bendRule: BendRule;
  readonly face: SizeFace;
  /** In order along the strip. */
  readonly turns: readonly Turn[];
  /** By stretch. */
  readonly curves: ReadonlyMap<number, ChainCurve>;
}

/** A curve as drawn. */
export interface ChainCurve {
  /** From a start that heads along x. */
  readonly chords: readonly Point[];
  /** Radians that the line turns at the joint before it. */
  readonly atStart: number;
}

/** The points, by index, along which a turn is made: one point for a bend, many for half a curve. */
export interface Pivot {
  readonly from: number;
  readonly to: number;
}

/** A folded strip: points along the drawn line, from the strip's one end at the origin. */
export interface Folded {
  readonly points: readonly Point[];
  /** Distance of each point along the flat strip as it was told, millimetres. */
  readonly along: readonly number[];
  /** By turn. */
  readonly pivots: readonly Pivot[];
  /** Radians turned through from end to end. */
  readonly turned: number;
}

/** Makes a strip ready for folding. */
export function chainOf(places: Places, bendRule: BendRule, face: SizeFace): Chain {
  const curves = new Map<number, ChainCurve>();
  const turns: Turn[] = [];
  places.places.forEach((place, index) => {
    if (place.bend !== undefined) {
      const { angle, direction } = place.bend.run;
      const drawn = toRadians(angle) * (direction === 'in' ? 1 : -1);
      turns.push({ kind: 'bend', place: index, drawn });
    }
    const stretch = places.stretches[index];
    if (stretch?.kind === 'curve') {
      const { atStart, first, second } = turnsOfCurve(places, index, stretch.run);
      curves.set(index, { chords: chordsOf(stretch.run), atStart });
      turns.push({ kind: 'half', stretch: index, half: 0, drawn: first });
      turns.push({ kind: 'half', stretch: index, half: 1, drawn: second });
    }
  });
  return { places, bendRule, face, turns, curves };
}

function chordsOf({ shape: { segment, start, end } }: CurveRun): Point[] {
  const heading = headingAt(segment, start);
  const angle = -Math.atan2(heading.y, heading.x);
  const stations = Array.from({ length: CHORDS + 1 }, (_, index) =>
    pointAt(segment, start + ((end - start) * index) / CHORDS),
  );
  return stations.slice(1).map((station, index) => {
    const chord = minus(station, stations[index] ?? station);
    return turnedAbout(chord, { x: 0, y: 0 }, angle);
  });
}

/**
 * Folds the strip: every flat as long as the marks at its ends leave it beside
 * the bends, every bend through its turn with the rule's radius, every curve
 * to its drawn shape, scaled to the length its marks leave and eased by what its turns
 * differ from the drawn ones.
 *
 * `marks` are the distances of the places from the square end; `turns` are
 * radians, positive to the left, in the order of `chain.turns`.
 */
export function fold(chain: Chain, marks: readonly number[], turns: readonly number[]): Folded {
  const { places, stretches } = chain.places;
  const takenUp = halfAllowances(chain, turns);
  const points: Point[] = [point(0, 0)];
  const along: number[] = [marks[0] ?? 0];
  const pivots: Pivot[] = [];
  let [at, heading, turn] = [point(0, 0), 0, 0];
  const step = (length: number, direction: number, distance: number) => {
    at = point(at.x + length * Math.cos(direction), at.y + length * Math.sin(direction));
    points.push(at);
    along.push(distance);
  };

  places.forEach((place, index) => {
    const mark = marks[index] ?? place.at;
    if (place.bend !== undefined) {
      const angle = turns[turn] ?? 0;
      const chord = 2 * faceRadius(chain, angle) * Math.sin(Math.abs(angle) / 4);
      step(chord, heading + angle / 4, mark);
      pivots.push({ from: points.length - 1, to: points.length - 1 });
      step(chord, heading + (3 * angle) / 4, mark + (takenUp[index] ?? 0));
      heading += angle;
      turn++;
    }
    const stretch = stretches[index];
    const next = marks[index + 1];
    if (stretch === undefined || next === undefined) {
      return;
    }
    const from = mark + (takenUp[index] ?? 0);
    const length = next - (takenUp[index + 1] ?? 0) - from;
    if (stretch.kind === 'curve') {
      const { chords = [], atStart = 0 } = chain.curves.get(index) ?? {};
      const scale = length / (stretch.to - stretch.from);
      const [first = 0, second = 0] = [turn, turn + 1].map(
        (half) => (turns[half] ?? 0) - (chain.turns[half]?.drawn ?? 0),
      );
      const start = points.length - 1;
      chords.forEach((chord, number) => {
        const share = (2 * (number + 0.5)) / chords.length;
        const ease = share < 1 ? first * share : first + second * (share - 1);
        const direction = heading + atStart + Math.atan2(chord.y, chord.x) + ease;
        const distance = from + (length * (number + 1)) / chords.length;
        step(scale * Math.hypot(chord.x, chord.y), direction, distance);
      });
      pivots.push({ from: start, to: start + chords.length / 2 });
      pivots.push({ from: start + chords.length / 2, to: start + chords.length });
      heading += (turns[turn] ?? 0) + (turns[turn + 1] ?? 0);
      turn += 2;
    } else {
      step(length, heading, from + length);
    }
  });
  return { points, along, pivots, turned: heading };
}

/** Half of what each place's bend takes up of the strip, 0 where there is none. */
function halfAllowances(
  { places, bendRule, turns: list }: Chain,
  turns: readonly number[],
): number[] {
  const half = places.places.map(() => 0);
  list.forEach((turn, index) => {
    if (turn.kind === 'bend') {
      const angle = Math.min(180, toDegrees(Math.abs(turns[index] ?? 0)));
      half[turn.place] = bendRule.allowance(angle) / 2;
    }
  });
  return half;
}

/** Radius of the drawn line in a bend. */
function faceRadius({ face, bendRule }: Chain, turn: number): number {
  const { insideRadius, thickness } = bendRule;
  if (face === 'middle') {
    return insideRadius + thickness / 2;
  }
  // The metal lies outside a line that is the inside face, and the other way round.
  const turnsToMetal = turn > 0 === (face === 'outside');
  return insideRadius + (turnsToMetal ? thickness : 0);
}
