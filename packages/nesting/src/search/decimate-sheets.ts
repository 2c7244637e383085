import type { SolveLimits } from '../entropy/max-entropy.js';
import { boxRowOf, type PlanEntropy } from './plan-entropy.js';

/** Whole sheets, and what they leave open. */
export interface DecimatedSheets {
  /** For each settled sheet, its pattern, as index in the plan's list. */
  readonly sheets: readonly number[];
  /** The box of each sheet that is open. */
  readonly open: readonly number[];
  /** By pattern of the plan, how many of the open sheets are expected to be of it. */
  readonly amounts: readonly number[];
}

/** A pattern, as index in the plan's list, and how many sheets are cut by it. */
type Sheets = readonly [pattern: number, count: number];

/** How far noise may raise what is expected, when the next is chosen. */
const NOISE = 0.3;
/** Sheets that lose so much entropy cannot be part of a whole plan. */
const MOST_LOST = 15;
/** The share of the sheets expected that is settled at once. */
const AT_ONCE = 0.7;
/** Where fewer than two of each are expected, one each is settled of those above, and this share of what is open. */
const LIKELY_ENOUGH = 0.4;
const SHARE_OF_OPEN = 1 / 6;
const LIMITS: SolveLimits = { near: 0.3, steps: 40 };

/**
 * Settles whole sheets by decimation: those that are expected most in the most even plan of
 * what is left, as long as they lose little entropy; one after another where several at once
 * lose much.
 * @param left so many sheets are left open
 * @param over asked now and then; true leaves open what is not settled yet
 */
export function decimateSheets(
  plan: PlanEntropy,
  left: number,
  random: () => number,
  over?: () => boolean,
): DecimatedSheets {
  const { numbers } = plan;
  const kept = stateOf(plan);
  const limits = { ...LIMITS, over };
  const right = plan.right.slice();
  const sheets: number[] = [];
  const openSheets = () => right.subarray(plan.firstBox).reduce((sum, count) => sum + count, 0);
  let { entropy } = plan;
  let singly = false;
  try {
    for (let open = openSheets(); open > left && !over?.(); open = openSheets()) {
      const several = singly ? [] : severalExpected(plan, right, open - left);
      const chosen = several.length > 1 ? several : likeliest(plan, random);
      if (chosen.length === 0) break;
      const before = stateOf(plan);
      for (const [pattern, count] of chosen) take(plan, right, pattern, count);
      const after = numbers.solve(right, limits);
      singly = after === undefined || entropy - after > MOST_LOST;
      if (after !== undefined && !singly) {
        entropy = after;
        for (const [pattern, count] of chosen)
          sheets.push(...new Array<number>(count).fill(pattern));
        continue;
      }
      for (const [pattern, count] of chosen) take(plan, right, pattern, -count);
      setBack(plan, before);
      if (chosen.length > 1) continue;
      numbers.active[chosen[0][0]] = 0;
      const without = numbers.solve(right, limits);
      if (without === undefined) break;
      entropy = without;
    }
    const boxes = [...right.subarray(plan.firstBox)].flatMap((count, box) =>
      new Array<number>(count).fill(box),
    );
    const amounts = [...numbers.amounts.subarray(0, plan.sheets.length)];
    return { sheets, open: boxes, amounts };
  } finally {
    setBack(plan, kept);
  }
}

function stateOf({ numbers: { multipliers, active, amounts } }: PlanEntropy) {
  return { multipliers: multipliers.slice(), active: active.slice(), amounts: amounts.slice() };
}

function setBack({ numbers }: PlanEntropy, state: ReturnType<typeof stateOf>): void {
  numbers.multipliers.set(state.multipliers);
  numbers.active.set(state.active);
  numbers.amounts.set(state.amounts);
}

/** A good part of the sheets that are expected, or one of each that is likely; no more than there are. */
function severalExpected(plan: PlanEntropy, right: Float64Array, most: number): readonly Sheets[] {
  const { amounts } = plan.numbers;
  const order = [...plan.sheets.keys()].filter((pattern) => amounts[pattern] > LIKELY_ENOUGH);
  order.sort((a, b) => amounts[b] - amounts[a] || a - b);
  const many = order.length > 0 && amounts[order[0]] * AT_ONCE >= 1;
  const left = right.slice();
  let open = many ? most : Math.ceil(most * SHARE_OF_OPEN);
  return order.flatMap((pattern) => {
    const row = boxRowOf(plan, pattern);
    const expected = many ? Math.floor(amounts[pattern] * AT_ONCE) : 1;
    const count = Math.min(expected, open, left[row]);
    if (count < 1) return [];
    open -= count;
    left[row] -= count;
    return [[pattern, count] as const];
  });
}

function likeliest({ numbers, sheets }: PlanEntropy, random: () => number): readonly Sheets[] {
  const { amounts } = numbers;
  let best: number | undefined;
  let most = 0;
  for (const pattern of sheets.keys()) {
    if (amounts[pattern] === 0) continue;
    const amount = amounts[pattern] * (1 + NOISE * random());
    if (amount > most) [best, most] = [pattern, amount];
  }
  return best === undefined ? [] : [[best, 1]];
}

/** Takes so many sheets of a pattern out of what is sought; the last of a box ends its patterns. */
function take(plan: PlanEntropy, right: Float64Array, pattern: number, count: number): void {
  const { numbers, sheets } = plan;
  for (const [row, copies] of numbers.entriesOf(pattern)) right[row] -= copies * count;
  const box = boxRowOf(plan, pattern);
  if (right[box] > 0) return;
  for (const other of sheets.keys()) {
    if (boxRowOf(plan, other) === box) numbers.active[other] = 0;
  }
}
