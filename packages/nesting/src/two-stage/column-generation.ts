import type { Deadline } from '../deadline.js';
import { type Engines, Master } from '../solvers/engine-choice.js';
import type { StockClass } from '../stock-classes.js';
import { type ExactBound, exactBound, type Multipliers } from './exact-bound.js';
import {
  masterRows,
  patternColumn,
  pieceCounts,
  shortageColumns,
  supplyColumns,
} from './linear-master.js';
import type { Objective } from './objective.js';
import type { CutPattern } from './patterns.js';
import type { Pricing } from './pricing.js';
import type { Faces } from './strip-families.js';

export interface LinearRequest {
  readonly faces: Faces;
  readonly pricing: Pricing;
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly objective: Objective;
  /** For each piece, what going without one costs: more than any plan would gain by it. */
  readonly penalties: readonly number[];
  /** Scale of exact multipliers. */
  readonly scale: number;
  /** Patterns to start from. */
  readonly start: readonly CutPattern[];
  /** True once a bound is as good as the caller can use. */
  readonly enough: (scaledBound: number) => boolean;
  /** Rounds after which to stop, unfinished; no limit when absent. */
  readonly mostRounds?: number;
  readonly deadline: Deadline;
  readonly engines: Engines;
}

export interface LinearResult {
  /** The best bound met with on the way; it holds wherever the loop ended. */
  readonly bound: ExactBound;
  /** The start patterns and all that were generated. */
  readonly patterns: readonly CutPattern[];
  /** How many sheets the linear plan cuts by each pattern; empty where there is none. */
  readonly amounts: readonly number[];
  readonly rounds: number;
  /** How many of each supply the linear plan takes, by class; empty where there is none. */
  readonly supplies: readonly (readonly number[])[];
  /** False where the deadline ended the loop before the linear master was solved. */
  readonly finished: boolean;
}

/** A pattern must gain this share of a coin to be worth a column. */
const LEAST_GAIN = 1e-6;

/**
 * Solves the linear master over all two-stage patterns by column generation:
 * solve, take the duals, price every face, add what gains, until nothing does.
 * Every round also gives an exact lower bound.
 */
export async function solveLinear(request: LinearRequest): Promise<LinearResult> {
  const { faces, classes, demand, objective, scale } = request;
  const rows = masterRows(demand, classes, objective);
  const master = new Master(rows.rows, request.engines);
  try {
    master.add(supplyColumns(rows, classes, objective));
    master.add(shortageColumns(request.penalties));
    const patterns = [...request.start];
    const seen = new Set(patterns.map((cut) => columnKey(faces, cut)));
    master.add(patterns.map((cut) => patternColumn(rows, faces, cut)));
    const boundAt = (multipliers: Multipliers) => {
      const priced = request.pricing.price(multipliers.pieces);
      const bound = exactBound(priced, faces, classes, demand, objective, multipliers);
      return { priced, bound };
    };
    let best = boundAt({ scale, pieces: new Float64Array(demand.length), budget: 0 }).bound;
    let supplies: LinearResult['supplies'] = [];
    let amounts: readonly number[] = [];
    const others = master.columns - patterns.length;
    for (let rounds = 1; ; rounds++) {
      const done = (finished: boolean): LinearResult => {
        return { bound: best, patterns, amounts, rounds, supplies, finished };
      };
      const seconds = request.deadline.left();
      if (seconds <= 0 || rounds > (request.mostRounds ?? rounds)) return done(false);
      const answer = await master.solve({ integer: false, seconds });
      if (answer.status !== 'optimal') return done(false);
      supplies = bySupply(answer.values, classes);
      amounts = answer.values.slice(others);
      const { priced, bound } = boundAt({
        scale,
        pieces: Float64Array.from(demand, (_, i) => wholeDual(answer.duals[i], scale)),
        budget: rows.budget === undefined ? 0 : wholeDual(-answer.duals[rows.budget], scale),
      });
      if (bound.scaled > best.scaled) best = bound;
      if (request.enough(best.scaled)) return done(true);
      const added: CutPattern[] = [];
      faces.faces.forEach((face, index) => {
        const sheet = Math.max(0, answer.duals[rows.firstClass + face.stockClass]);
        if (priced.faceWorth[index] <= (sheet + LEAST_GAIN) * scale) return;
        const cut = priced.cut(index);
        const key = columnKey(faces, cut);
        if (seen.has(key)) return;
        seen.add(key);
        added.push(cut);
      });
      if (added.length === 0) return done(true);
      patterns.push(...added);
      master.add(added.map((cut) => patternColumn(rows, faces, cut)));
    }
  } finally {
    master.close();
  }
}

/** The supplies' columns come first in the master. */
function bySupply(
  values: readonly number[],
  classes: readonly StockClass[],
): readonly (readonly number[])[] {
  let from = 0;
  return classes.map((entry) => {
    from += entry.supplies.length;
    return values.slice(from - entry.supplies.length, from);
  });
}

function wholeDual(dual: number, scale: number): number {
  return Math.max(0, Math.floor(dual * scale));
}

/** Columns are the same to the linear master where they give the same pieces from the same class. */
function columnKey(faces: Faces, cut: CutPattern): string {
  const counts = [...pieceCounts(faces, cut)].sort((a, b) => a[0] - b[0]);
  return `${faces.faces[cut.face].stockClass};${counts.join(';')}`;
}
