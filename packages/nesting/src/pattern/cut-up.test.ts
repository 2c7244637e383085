import { describe, expect, it } from 'vitest';
import type { Stages } from '../problem.js';
import { cutUp } from './cut-up.js';
import type { CuttingRules } from './cutting-rules.js';
import type { Part } from './part.js';

const rules = (stages: Stages): CuttingRules => ({
  pieces: [{ id: 'a', length: 3, width: 2, quantity: 9, mayTurn: false }],
  limits: { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 },
  stages,
  firstCut: 'across',
});
const lay: Part = { kind: 'lay', piece: 0, turned: false };
const whole = (cuts: 'along' | 'across', extent: number, part: Part): Part => ({
  kind: 'split',
  cuts,
  parts: [{ extent, part }],
});

function stagesOf(part: Part, stages: Stages): readonly string[] {
  const told: string[] = [];
  const cut = ({ stage, runs }: { stage: number; runs: string }) => told.push(`${stage} ${runs}`);
  expect(cutUp(part, { length: 10, width: 4 }, rules(stages), { cut })).toBe(true);
  return told;
}

describe('the stages of cutUp', () => {
  // The whole box is one band of one section, which is then cut across.
  const nested = whole('across', 10, whole('along', 4, whole('across', 3, lay)));

  it('count changes of direction in free cutting, none where nothing is cut', () => {
    expect(stagesOf(nested, 'free')).toEqual(['1 across', '2 along']);
    const along = whole('across', 10, whole('along', 2, whole('across', 3, lay)));
    expect(stagesOf(along, 'free')).toEqual(['2 along', '3 across']);
  });

  it('count the levels of the pattern where their number is limited', () => {
    expect(stagesOf(nested, 3)).toEqual(['3 across', '4 along']);
  });
});
