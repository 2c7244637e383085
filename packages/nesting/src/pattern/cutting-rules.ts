import type { CuttingProblem, KeepRule, Metal, Piece, Shear, Stages, Stock } from '../problem.js';
import type { BoxLay } from './box.js';
import type { Limits } from './limits.js';

/** Everything but the stock that decides how a pattern is cut and what comes of it. */
export interface CuttingRules {
  readonly pieces: readonly Piece[];
  readonly limits: Limits;
  readonly stages: Stages;
  readonly firstCut: Shear['firstCut'];
}

/** What a pattern is cut from: a rectangle in gross ticks, and the rule for its remnants. */
export interface CutBox {
  /** Gross ticks along the stock's length, the trim of its edges taken off. */
  readonly length: number;
  /** Gross ticks along its width. */
  readonly width: number;
  /** The rule for keeping offcuts of its metal, if there is one. */
  readonly keep?: KeepRule | undefined;
}

/** A box with the ways in which pieces may lie on it, for what fills it with pieces. */
export interface FillBox extends CutBox {
  readonly lays: readonly BoxLay[];
}

export function cuttingRules(problem: CuttingProblem): CuttingRules {
  const { shear, pieces } = problem;
  const limits = {
    kerf: shear.kerf ?? 0,
    longestCut: shear.longestCut ?? Number.POSITIVE_INFINITY,
    narrowest: Math.max(1, shear.narrowestStrip ?? 0),
  };
  return { pieces, limits, stages: shear.stages ?? 2, firstCut: shear.firstCut };
}

/** What is left of a stock when its edges are trimmed. */
export function cutBox(stock: Stock, problem: CuttingProblem): CutBox {
  const trims = 2 * edgeTrim(stock, problem.shear);
  const kerf = problem.shear.kerf ?? 0;
  return {
    length: stock.length - trims + kerf,
    width: stock.width - trims + kerf,
    keep: keepRuleFor(stock, problem.keep),
  };
}

/** Ticks taken off each edge of a stock before anything else is cut. */
export function edgeTrim(stock: Stock, shear: Shear): number {
  return stock.kind === 'sheet' ? (shear.trim ?? 0) : 0;
}

/** The rule for remnants of a metal. */
export function keepRuleFor(
  { metal, thickness }: Metal,
  rules: readonly KeepRule[] = [],
): KeepRule | undefined {
  return rules.find((rule) => rule.metal === metal && rule.thickness === thickness);
}
