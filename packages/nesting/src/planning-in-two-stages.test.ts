import { describe, expect, it } from 'vitest';
import { deadlineIn } from './deadline.js';
import { money, totalCost } from './master/objective.js';
import { stockClasses } from './master/stock-class.js';
import { cuttingRules } from './pattern/cutting-rules.js';
import { legal } from './pattern/legal.js';
import { either, offcut, piece, sheet } from './plan-cutting.test.support.js';
import { planningInTwoStages } from './planning-in-two-stages.js';
import { demandLeft, type Planned, sheetsUsed } from './search/planned.js';
import { standardEngines } from './solvers/engine-choice.js';

describe('planning in two stages', () => {
  it('tells plans that can be cut so, each for less than the one before', async () => {
    const problem = {
      pieces: [piece('a', 31, 12, 9), piece('b', 22, 17, 17), piece('c', 41, 9, 15)],
      stock: [
        sheet('s', 100, 60, { price: 50 }),
        sheet('t', 70, 40, { price: 26 }),
        offcut('A', 50, 40),
      ],
      shear: { ...either, stages: 'free', narrowestStrip: 4 },
    } as const;
    const rules = cuttingRules(problem);
    const classes = stockClasses(problem, rules.limits, () => 0);
    const boxes = classes.map(({ box }) => ({ ...box, keep: undefined }));
    const demand = problem.pieces.map(({ quantity }) => quantity);
    const effort = { rounds: 0, integerMasters: 0, nodes: 0 };
    const plan = planningInTwoStages(
      {
        classes,
        boxes,
        demand,
        rules,
        worth: undefined,
        engines: standardEngines,
        effort,
        over: () => false,
      },
      undefined,
      1,
    );
    const told: (readonly Planned[])[] = [];
    const seen = await plan(deadlineIn(20), (better) => {
      if (better !== undefined) told.push(better);
    });
    expect(told.length).toBeGreaterThan(0);
    const costs = told.map((planned) =>
      totalCost(classes, sheetsUsed(planned, classes.length), money),
    );
    expect(costs).toEqual([...new Set(costs)].sort((a, b) => b - a));
    for (const planned of told) {
      expect(demandLeft(demand, planned).every((copies) => copies <= 0)).toBe(true);
      for (const { pattern } of planned) {
        const box = boxes[pattern.stockClass];
        expect(legal(pattern.part, box, { ...rules, stages: 2 })).toBe(true);
      }
    }
    expect(effort.rounds).toBeGreaterThan(0);
    // What came up serves other kinds of cutting as well.
    expect(seen.sheets.length).toBeGreaterThan(told.at(-1)?.length ?? 0);
    expect(seen.bands.length).toBeGreaterThan(3);
  });
});
