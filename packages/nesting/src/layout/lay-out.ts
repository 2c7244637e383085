import { cutUp, type GrossRectangle, type PatternCut } from '../pattern/cut-up.js';
import { cutBox, cuttingRules, edgeTrim } from '../pattern/cutting-rules.js';
import { isKept, keptValue } from '../pattern/kept-value.js';
import type { Pattern } from '../pattern/part.js';
import { inOrder } from '../pattern/pattern-key.js';
import type { Cut, Layout, PlacedPiece, Remnant } from '../plan.js';
import type { CuttingProblem, Stock } from '../problem.js';
import { cutsInOrder } from './cut-order.js';

/**
 * Draws a pattern on a stock: the edges trimmed, slices from the usable corner
 * on, every piece at the near corner of its slice, cuts in the order they are
 * made, remnants with what the rule for keeping offcuts says of them.
 * @param count how many of the stock are cut so
 * @throws Error where the pattern is larger than the stock
 */
export function layOut(
  pattern: Pattern,
  stock: Stock,
  count: number,
  problem: CuttingProblem,
): Layout {
  const rules = cuttingRules(problem);
  const box = cutBox(stock, problem);
  const { kerf } = rules.limits;
  const trim = edgeTrim(stock, problem.shear);
  const part = inOrder(pattern.part);
  const net = (at: GrossRectangle) => ({
    x: at.x + trim,
    y: at.y + trim,
    length: at.length - kerf,
    width: at.width - kerf,
  });

  const pieces: PlacedPiece[] = [];
  const remnants: Remnant[] = [];
  const fits = cutUp(part, box, rules, {
    piece: ({ piece, turned }, at) =>
      pieces.push({ piece: problem.pieces[piece].id, ...net(at), turned }),
    remnant: (at) => {
      const { length, width } = net(at);
      const keep = isKept(length, width, box.keep);
      remnants.push({ ...net(at), keep, value: keptValue(length, width, box.keep) });
    },
  });
  if (!fits) throw new Error(`a pattern is larger than '${stock.id}'`);

  const line = ({ stage, runs, from, near }: PatternCut): Cut => {
    const { x, y, length, width } = net(from);
    return runs === 'along'
      ? { stage, x1: x, y1: y + near - kerf, x2: x + length, y2: y + near - kerf }
      : { stage, x1: x + near - kerf, y1: y, x2: x + near - kerf, y2: y + width };
  };
  const cuts = [
    ...edgeCuts(stock, trim, kerf),
    ...cutsInOrder(part, box, rules).map((cut) => line(cut)),
  ];
  return { stock: stock.id, count, pieces, cuts, remnants };
}

/** Left, right, bottom, top. The dust of each lies outside of what is usable. */
function edgeCuts({ length, width }: Stock, trim: number, kerf: number): readonly Cut[] {
  if (trim === 0) return [];
  const near = trim - kerf;
  const right = length - trim;
  const top = width - trim;
  return [
    { stage: 0, x1: near, y1: 0, x2: near, y2: width },
    { stage: 0, x1: right, y1: 0, x2: right, y2: width },
    { stage: 0, x1: trim, y1: near, x2: right, y2: near },
    { stage: 0, x1: trim, y1: top, x2: right, y2: top },
  ];
}
