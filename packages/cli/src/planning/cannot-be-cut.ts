import type { CuttingProblem, PlanOutcome } from '@stripwright/nesting';
import { printLength, printSize, type Rule } from '../length/print-length.js';
import { ticksToMillimetres } from '../length/ticks.js';

/**
 * Why an order cannot be cut from its stock, and what to do. One line for each piece.
 * @param limit what ended the search: so many seconds, the user, or the search itself
 */
export function cannotBeCut(
  outcome: Exclude<PlanOutcome, { status: 'planned' }>,
  problem: CuttingProblem,
  rule: Rule,
  limit: number | 'called off' | undefined,
): string {
  switch (outcome.status) {
    case 'no stock of the metal':
      return outcome.pieces.map((id) => noStockOfTheMetal(id, problem)).join('\n');
    case 'piece too narrow':
      return outcome.pieces.map((id) => pieceTooNarrow(id, problem, rule)).join('\n');
    case 'piece too large':
      return outcome.pieces.map((id) => pieceTooLarge(id, outcome, problem, rule)).join('\n');
    case 'not enough stock':
      return (
        'sheets and offcuts: every piece fits, but there is not enough to cut them all from; ' +
        'raise "on hand" or "can buy", or add a sheet'
      );
    case 'none found':
      if (limit === 'called off') return 'items: stopped before any plan was found';
      return limit === undefined
        ? 'items: no plan was found before the search gave up; give --time-limit more seconds'
        : `items: no plan was found in ${limit} s; give --time-limit more seconds`;
  }
}

function noStockOfTheMetal(id: string, { pieces }: CuttingProblem): string {
  const piece = pieces.find((candidate) => candidate.id === id);
  const thickness = piece?.thickness === undefined ? '' : ` of ${piece.thickness} mm`;
  const metal = `${piece?.metal ?? 'a metal without a name'}${thickness}`;
  return `items: "${id}" takes ${metal}, and no sheet or offcut is of it; add one that is`;
}

function pieceTooNarrow(id: string, { pieces, shear }: CuttingProblem, rule: Rule): string {
  const long = (ticks: number) => ticksToMillimetres(ticks, rule.mark);
  const piece = pieces.find((candidate) => candidate.id === id);
  const size =
    piece === undefined ? 'unknown size' : printSize(long(piece.length), long(piece.width), rule);
  const narrowest = printLength(long(shear.narrowestStrip ?? 0), rule);
  return (
    `items: "${id}" takes a blank of ${size}, too narrow for the shear; ` +
    `the narrowest strip that it holds is ${narrowest}`
  );
}

function pieceTooLarge(
  id: string,
  { largestStock, forTheShear }: Extract<PlanOutcome, { status: 'piece too large' }>,
  { pieces, stock, shear }: CuttingProblem,
  rule: Rule,
): string {
  const long = (ticks: number) => ticksToMillimetres(ticks, rule.mark);
  const size = (sides: { readonly length: number; readonly width: number } | undefined) =>
    sides === undefined ? 'unknown size' : printSize(long(sides.length), long(sides.width), rule);
  const piece = pieces.find((candidate) => candidate.id === id);
  const turn = piece?.mayTurn === false ? ' (it may not be turned)' : '';
  const takes = `items: "${id}" takes a blank of ${size(piece)}${turn}`;
  if (forTheShear.includes(id) && shear.longestCut !== undefined) {
    const reach = printLength(long(shear.longestCut), rule);
    return `${takes}, which takes a longer cut than the shear makes; its longest is ${reach}`;
  }
  const largest = stock.find((candidate) => candidate.id === largestStock);
  return (
    `${takes}, which fits no sheet or offcut; ` +
    `the largest is "${largestStock}", ${size(largest)}`
  );
}
