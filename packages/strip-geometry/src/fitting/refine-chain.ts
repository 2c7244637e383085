import { FULL_TURN } from '../angle.js';
import {
  offsetFrom,
  type Slopes,
  slopesOf,
  stepped,
  type Unknowns,
  unknownsOf,
} from './chain-slopes.js';
import { solvePositive } from './linear-system.js';
import type { RingOfPoints } from './ring-of-points.js';
import { type Chain, stations } from './smooth-chain.js';

const MOST_STEPS = 15;

/** How much more it counts that the chain closes than that it passes a point. */
const CLOSING_WEIGHT = 1e4;

/** A link with no more points than this needs them all. */
const FEW = 4;

/** Links shorter than this, in millimetres, are none. */
const SHORTEST = 0.05;

/** A chain, with the number of the first point that belongs to each of its links. */
export interface PlacedChain {
  readonly chain: Chain;
  readonly firsts: readonly number[];
}

/**
 * The closed chain with the same kinds of links and corners that passes its
 * points with the least sum of squared distances (Gauss-Newton steps, damped as
 * Levenberg and Marquardt do). Undefined where no such chain is found.
 */
export function refinedChain(rough: PlacedChain, ring: RingOfPoints): PlacedChain | undefined {
  const unknowns = unknownsOf(rough.chain);
  let { chain, firsts } = rough;
  let damping = 1e-3;
  let error = totalError(chain, firsts, ring);
  for (let count = 0; count < MOST_STEPS; count++) {
    const step = nextStep(chain, unknowns, firsts, ring, damping);
    const next = step && stepped(chain, unknowns, step);
    const nextError = next ? totalError(next, firsts, ring) : Infinity;
    if (next === undefined || !(nextError <= error)) {
      damping *= 10;
      if (damping > 1e6) {
        break;
      }
      continue;
    }
    const settled = error - nextError < 1e-9 * error;
    chain = next;
    damping = Math.max(damping / 10, 1e-9);
    const moved = replaced(chain, firsts, ring);
    const same = moved.every((first, index) => first === firsts[index]);
    firsts = moved;
    error = totalError(chain, firsts, ring);
    if (settled && same) {
      break;
    }
  }
  const shut = closedExactly(chain, unknowns);
  return shut?.links.every(({ length }) => length > SHORTEST) ? { chain: shut, firsts } : undefined;
}

/** Every point with the link it belongs to; those right at corners belong to none. */
function forEachPoint(
  { links }: Chain,
  firsts: readonly number[],
  ring: RingOfPoints,
  visit: (link: number, number: number) => void,
): void {
  links.forEach((link, index) => {
    const before = links[(index + links.length - 1) % links.length];
    const first = firsts[index] ?? 0;
    const next = firsts[index + 1] ?? (firsts[0] ?? 0) + ring.size;
    const spare = next - first > FEW ? 1 : 0;
    const from = first + (before?.corner ? spare : 0);
    for (let number = from; number < next - (link.corner ? spare : 0); number++) {
      visit(index, number);
    }
  });
}

function totalError(chain: Chain, firsts: readonly number[], ring: RingOfPoints): number {
  const places = stations(chain);
  let sum = 0;
  forEachPoint(chain, firsts, ring, (index, number) => {
    const start = places[index];
    const link = chain.links[index];
    if (start !== undefined && link !== undefined) {
      sum += offsetFrom(start, link.curvature, ring.at(number)).distance ** 2;
    }
  });
  const gaps = closingGaps(chain, places.at(-1) ?? { ...chain.start, heading: 0 });
  return sum + CLOSING_WEIGHT * gaps.reduce((total, gap) => total + gap * gap, 0);
}

/** By how much the chain fails to close: across, up and, unless it ends in a corner, in heading. */
function closingGaps(
  { start, heading, links }: Chain,
  end: { readonly x: number; readonly y: number; readonly heading: number },
): readonly number[] {
  const gaps = [end.x - start.x, end.y - start.y];
  return links.at(-1)?.corner ? gaps : [...gaps, end.heading - heading - FULL_TURN];
}

/** Slopes of the closing gaps, in the same order. */
function closingSlopes({ links }: Chain, end: Slopes): Float64Array[] {
  const minusOne = (values: Float64Array, place: number) => {
    const copy = values.slice();
    copy[place] = (copy[place] ?? 0) - 1;
    return copy;
  };
  const rows = [minusOne(end.x, 0), minusOne(end.y, 1)];
  return links.at(-1)?.corner ? rows : [...rows, minusOne(end.heading, 2)];
}

function nextStep(
  chain: Chain,
  unknowns: Unknowns,
  firsts: readonly number[],
  ring: RingOfPoints,
  damping: number,
): Float64Array | undefined {
  const { count } = unknowns;
  const all = slopesOf(chain, unknowns);
  const matrix = new Float64Array(count * count);
  const right = new Float64Array(count);
  const sums = localSums(chain, all, firsts, ring);
  all.slice(0, -1).forEach(({ x, y, heading }, index) => {
    const bend = new Float64Array(count);
    const place = unknowns.links[index]?.curvature ?? -1;
    if (place >= 0) {
      bend[place] = 1;
    }
    addLocal(matrix, right, [x, y, heading, bend], sums[index] ?? emptySums());
  });
  const end = all.at(-1);
  if (end === undefined) {
    return undefined;
  }
  const gaps = closingGaps(chain, end.station);
  closingSlopes(chain, end).forEach((row, index) => {
    const square = Float64Array.of(CLOSING_WEIGHT);
    addLocal(matrix, right, [row], { square, value: square.map((w) => w * (gaps[index] ?? 0)) });
  });
  for (let i = 0; i < count; i++) {
    const diagonal = matrix[i * count + i] ?? 0;
    matrix[i * count + i] = diagonal * (1 + damping) + 1e-12;
  }
  return solvePositive(matrix, right, count);
}

/** Sums over the points of a link, of the slopes of their offsets with its own four unknowns. */
interface LocalSums {
  /** Products of slopes, row by row. */
  readonly square: Float64Array;
  /** Products of slopes and offsets. */
  readonly value: Float64Array;
}

function emptySums(): LocalSums {
  return { square: new Float64Array(16), value: new Float64Array(4) };
}

function localSums(
  chain: Chain,
  all: readonly Slopes[],
  firsts: readonly number[],
  ring: RingOfPoints,
): readonly LocalSums[] {
  const sums = chain.links.map(emptySums);
  forEachPoint(chain, firsts, ring, (index, number) => {
    const station = all[index]?.station;
    const link = chain.links[index];
    const sum = sums[index];
    if (station === undefined || link === undefined || sum === undefined) {
      return;
    }
    const { distance, slopes } = offsetFrom(station, link.curvature, ring.at(number));
    slopes.forEach((slope, i) => {
      sum.value[i] = (sum.value[i] ?? 0) + slope * distance;
      slopes.forEach((other, j) => {
        sum.square[4 * i + j] = (sum.square[4 * i + j] ?? 0) + slope * other;
      });
    });
  });
  return sums;
}

/** Adds sums over a few local unknowns, whose slopes with all unknowns are `rows`. */
function addLocal(
  matrix: Float64Array,
  right: Float64Array,
  rows: readonly Float64Array[],
  { square, value }: LocalSums,
): void {
  const count = right.length;
  rows.forEach((row, local) => {
    const mixed = new Float64Array(count);
    rows.forEach((other, k) => {
      const factor = square[local * rows.length + k] ?? 0;
      for (let j = 0; j < count; j++) {
        mixed[j] = (mixed[j] ?? 0) + factor * (other[j] ?? 0);
      }
    });
    for (let i = 0; i < count; i++) {
      const slope = row[i] ?? 0;
      if (slope !== 0) {
        right[i] = (right[i] ?? 0) - slope * (value[local] ?? 0);
        for (let j = 0; j <= i; j++) {
          matrix[i * count + j] = (matrix[i * count + j] ?? 0) + slope * (mixed[j] ?? 0);
        }
      }
    }
  });
}

/** The chain closed to the last digit, by the least change that does it. */
function closedExactly(chain: Chain, unknowns: Unknowns): Chain | undefined {
  let shut = chain;
  for (let round = 0; round < 4; round++) {
    const end = slopesOf(shut, unknowns).at(-1);
    if (end === undefined) {
      return undefined;
    }
    const rows = closingSlopes(shut, end);
    const gaps = closingGaps(shut, end.station);
    const size = rows.length;
    const products = new Float64Array(size * size);
    rows.forEach((row, i) => {
      rows.forEach((other, j) => {
        products[i * size + j] = row.reduce((sum, value, k) => sum + value * (other[k] ?? 0), 0);
      });
      // The conditions say the same twice where one link goes all the way round.
      products[i * size + i] = (products[i * size + i] ?? 0) * (1 + 1e-10) + 1e-10;
    });
    const factors = solvePositive(products, Float64Array.from(gaps), size);
    if (factors === undefined) {
      return undefined;
    }
    const step = new Float64Array(unknowns.count);
    rows.forEach((row, i) => {
      row.forEach((value, k) => {
        step[k] = (step[k] ?? 0) - value * (factors[i] ?? 0);
      });
    });
    shut = stepped(shut, unknowns, step);
  }
  return shut;
}

/** Points are handed over between neighbours where they lie beyond the joint. */
function replaced(chain: Chain, firsts: readonly number[], ring: RingOfPoints): readonly number[] {
  const places = stations(chain);
  const moved = [...firsts];
  const count = firsts.length;
  if (count < 2) {
    return firsts;
  }
  for (let index = 0; index < count; index++) {
    const place = places[index];
    const turn = chain.links[(index + count - 1) % count]?.turn ?? 0;
    if (place === undefined) {
      continue;
    }
    const heading = place.heading - turn / 2;
    const beyond = (number: number) => {
      const point = ring.at(number);
      const across = (point.x - place.x) * Math.cos(heading);
      return across + (point.y - place.y) * Math.sin(heading) > 0;
    };
    const least = index === 0 ? (moved[count - 1] ?? 0) - ring.size : (moved[index - 1] ?? 0);
    const most = index === count - 1 ? (moved[0] ?? 0) + ring.size : (moved[index + 1] ?? 0);
    let first = moved[index] ?? 0;
    for (let tries = 0; tries < 5 && first + 3 < most && !beyond(first); tries++) {
      first += 1;
    }
    for (let tries = 0; tries < 5 && first - 3 > least && beyond(first - 1); tries++) {
      first -= 1;
    }
    moved[index] = first;
  }
  return moved;
}
