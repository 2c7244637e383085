import type { Point } from '../outline.js';
import { changeFor, type Wish } from './wish.js';

/** How a vector changes with the unknowns, near where they are. */
export interface Effect {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Vectors, all given by some unknowns, of which the longest should be as short as can be. */
export interface Centring<State> {
  /** How many unknowns there are. */
  readonly size: number;
  offsets(state: State): readonly Point[];
  /** By vector. */
  effects(state: State): readonly Effect[];
  /** What else is wished for, where vectors are up to `bound` long. */
  wishes(state: State, bound: number): readonly Wish[];
  /** The state with a share of a change made to its unknowns. */
  changed(state: State, change: Float64Array, share: number): State;
}

/** A state with every vector shorter than `bound`, as far from it as will do. */
export interface Centred<State> {
  readonly state: State;
  readonly bound: number;
}

/** How far above the longest vector the bound starts. */
const ROOM = 1.5;
/** The rounds end when the bound is this near to the longest vector, as a part of it. */
const NEAR = 0.002;
const MOST_ROUNDS = 100;
/** A Newton decrement, squared, above this is far from the middle (Boyd and Vandenberghe, 9.5). */
const LONG = 0.25;
/** A change is halved no further than to this share. */
const LEAST_SHARE = 0.001;

/**
 * Shortens the longest vector round by round, by the method of centres: one Newton
 * step toward the middle of all states that keep every vector below a bound, the
 * one that makes the sum of -log(bound^2 - length^2) least; then the bound comes
 * closer to what was reached (P. Huard, 1967; logarithmic barriers as in S. Boyd
 * and L. Vandenberghe, Convex Optimization, chapter 11; from memory). `least`
 * is a length that need not be gone below; `shrink` is how much of the room between
 * the longest vector and the bound is left each round: more for many unknowns, which
 * one step brings less near to the middle. Yields the state of each round.
 */
export function* centre<State>(
  problem: Centring<State>,
  start: State,
  { least, shrink }: { readonly least: number; readonly shrink: number },
): Generator<Centred<State>> {
  let state = start;
  let largest = longest(problem.offsets(state));
  let bound = ROOM * largest + least;
  for (let round = 0; round < MOST_ROUNDS && bound - largest > NEAR * bound; round++) {
    const step = stepped(problem, state, bound);
    state = step.state;
    yield { state, bound };
    largest = longest(problem.offsets(state));
    // A long step has not come near to the middle yet; one more toward the same bound will.
    bound = step.long ? bound : largest + shrink * (bound - largest);
  }
}

/** One Newton step, shortened until it makes the sum less; the state itself if no share does. */
function stepped<State>(
  problem: Centring<State>,
  state: State,
  bound: number,
): { readonly state: State; readonly long: boolean } {
  const wishes = centringWishes(problem, state, bound);
  const change = changeFor(wishes, problem.size);
  const now = sumOf(problem, state, bound);
  for (let share = 1; share > LEAST_SHARE; share /= 2) {
    const next = problem.changed(state, change, share);
    if (sumOf(problem, next, bound) < now) {
      return { state: next, long: decrement(wishes, change) > LONG };
    }
  }
  return { state, long: false };
}

/** By how much the sum would fall along the change if it went on as it begins (Newton decrement, squared). */
function decrement(wishes: readonly Wish[], change: Float64Array): number {
  return (
    -2 *
    wishes.reduce((sum, { row, off, weight }) => {
      const moved = row.reduce((total, entry, index) => total + entry * (change[index] ?? 0), 0);
      return sum + weight * off * moved;
    }, 0)
  );
}

function sumOf<State>(problem: Centring<State>, state: State, bound: number): number {
  const wishes = problem.wishes(state, bound);
  const rest = wishes.reduce((sum, { off, weight }) => sum + weight * off * off, 0);
  return problem.offsets(state).reduce((sum, { x, y }) => {
    const room = bound * bound - x * x - y * y;
    return room > 0 ? sum - Math.log(room) : Number.POSITIVE_INFINITY;
  }, rest);
}

/**
 * The sum as squares, true to the second order: with d = bound^2 - length^2,
 * -log d has the gradient 2 u / d and the second derivatives 2 / d, across u, and
 * 2 / d + 4 length^2 / d^2, along it.
 */
export function centringWishes<State>(
  problem: Centring<State>,
  state: State,
  bound: number,
): readonly Wish[] {
  const wishes: Wish[] = [...problem.wishes(state, bound)];
  const effects = problem.effects(state);
  problem.offsets(state).forEach((u, index) => {
    const effect = effects[index];
    if (effect === undefined) {
      return;
    }
    const length = Math.hypot(u.x, u.y);
    const d = bound * bound - length * length;
    const [x, y] = length > 0 ? [u.x / length, u.y / length] : [1, 0];
    const across = 1 / d;
    const along = across + (2 * length * length) / (d * d);
    wishes.push({ row: mixed(effect, x, y), off: length / d / along, weight: along });
    wishes.push({ row: mixed(effect, -y, x), off: 0, weight: across });
  });
  return wishes;
}

function mixed({ x, y }: Effect, ofX: number, ofY: number): Float64Array {
  return x.map((entry, index) => ofX * entry + ofY * (y[index] ?? 0));
}

export function longest(vectors: readonly Point[]): number {
  return vectors.reduce((most, { x, y }) => Math.max(most, Math.hypot(x, y)), 0);
}
