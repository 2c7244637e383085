import loadHighsModule, { type Highs } from 'highs';
import { everyCutting } from './every-cutting.test.support.js';
import { keepValue } from './keep-value.test.support.js';
import type { CuttingProblem, Stock } from './problem.js';

export async function loadHighs(): Promise<Highs> {
  return (loadHighsModule as unknown as typeof loadHighsModule.default)();
}

/**
 * What the cheapest way of cutting a small problem costs, by `everyCutting` for
 * each stock and one integer program over all that they can yield, handed to
 * HiGHS as text. No code of the planner takes part.
 */
export function leastCost(highs: Highs, problem: CuttingProblem): number | 'cannot be cut' {
  const solved = highs.solve(model(problem), {
    output_flag: false,
    mip_rel_gap: 0,
    mip_abs_gap: 1e-6,
  });
  if (solved.Status === 'Infeasible') return 'cannot be cut';
  if (solved.Status !== 'Optimal') throw new Error(`HiGHS says '${solved.Status}'`);
  return Math.round(solved.ObjectiveValue);
}

/** Terms of the objective and whole rows, as lines of an LP file. */
interface Lines {
  readonly objective: string[];
  readonly rows: string[];
  readonly integers: string[];
}

function model(problem: CuttingProblem): string {
  const lines: Lines = { objective: [], rows: [], integers: [] };
  const made: string[][] = problem.pieces.map(() => []);
  const most = problem.pieces.reduce((sum, piece) => sum + piece.quantity, 0);
  problem.stock.forEach((stock, s) => {
    const used = everyCutting(problem, stock)
      .filter(({ counts }) => counts.some((count) => count > 0))
      .map(({ counts, kept }, y) => {
        const name = `cut_${s}_${y}`;
        lines.integers.push(name);
        if (kept > 0) lines.objective.push(`- ${kept} ${name}`);
        for (const [piece, count] of counts.entries()) {
          if (count > 0) made[piece].push(`${count} ${name}`);
        }
        return name;
      });
    if (used.length > 0) payFor(lines, problem, stock, s, used, most);
  });
  for (const [piece, terms] of made.entries()) {
    lines.rows.push(`${terms.join(' + ') || '0 none'} = ${problem.pieces[piece].quantity}`);
  }
  return [
    'Minimize',
    ` cost: ${lines.objective.join(' ') || '0 none'}`,
    'Subject To',
    ...lines.rows.map((row, i) => ` r${i}: ${row}`),
    'Bounds',
    ' 0 <= none <= 0',
    ...(lines.integers.length > 0 ? ['General', ` ${lines.integers.join(' ')}`] : []),
    'End',
  ].join('\n');
}

/** Rows and costs of where stock that is used comes from. */
function payFor(
  lines: Lines,
  problem: CuttingProblem,
  stock: Stock,
  s: number,
  used: readonly string[],
  most: number,
): void {
  const [hand, bought, packs, over, all] = ['hand', 'new', 'packs', 'over', 'all'].map(
    (name) => `${name}_${s}`,
  );
  const whole = keepValue(problem, stock, stock.length, stock.width);
  lines.objective.push(`+ ${stock.bookValue ?? whole} ${hand}`);
  if (stock.kind === 'offcut') {
    lines.integers.push(`${hand}`);
    lines.rows.push(`${used.join(' + ')} - ${hand} = 0`, `${hand} <= 1`);
    return;
  }
  const pack = stock.packSize ?? 1;
  const buyable = stock.canBuy === 'any' ? most + pack : stock.canBuy;
  lines.integers.push(`${hand} ${bought} ${packs} ${over} ${all}`);
  lines.objective.push(`+ ${stock.price * pack} ${packs}`, `- ${whole} ${over}`);
  lines.rows.push(
    `${used.join(' + ')} - ${hand} - ${bought} = 0`,
    `${hand} <= ${stock.onHand}`,
    // Bought in whole packs; what is left over of them is worth what a whole one is in the rack.
    `${pack} ${packs} - ${bought} - ${over} = 0`,
    `${over} <= ${pack - 1}`,
    `${pack} ${packs} <= ${buyable}`,
    // None is bought before all on hand are used: `all` is 1 where they are.
    `${all} <= 1`,
    `${hand} - ${stock.onHand} ${all} >= 0`,
    `${bought} - ${most} ${all} <= 0`,
  );
}
