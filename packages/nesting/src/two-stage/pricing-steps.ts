import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import { lotsOf } from './lots.js';
import { type Measure, stepsOf } from './measure.js';
import type { TriedWidths } from './strip-family.js';

/**
 * About how many places a pass over the strips and sheets of boxes looks at, where remnants have no
 * value: each costs a step, and a byte of memory.
 * @param demand copies of each piece that are of use
 */
export function pricingSteps(
  boxes: readonly Box[],
  demand: readonly number[],
  { kerf, narrowest }: Limits,
  tried: TriedWidths,
  measure: Measure,
): number {
  const widthsOfLay = narrowest <= 1 ? 1 : tried === 'few' ? 2 : 3;
  return boxes.reduce((sum, box) => {
    const ways = box.firstCuts.map((cuts) => {
      const straight = cuts === 'along';
      const [length, breadth] = straight ? [box.length, box.width] : [box.width, box.length];
      let strips = 0;
      let sheets = 0;
      const inStrip: { readonly across: number; readonly lots: number }[] = [];
      for (const lay of box.lays) {
        const [along, across] = straight ? [lay.length, lay.width] : [lay.width, lay.length];
        if (along > length || across > breadth) continue;
        const own = lots(along, length, demand[lay.piece], measure);
        inStrip.push({ across, lots: own });
        strips += own;
        sheets += lots(across, breadth, demand[lay.piece], measure) * widthsOfLay;
      }
      // A width shares with others only what is narrower by more than a kerf.
      if (narrowest > 1) strips += widthsOfLay * lotsWithin(kerf, inStrip);
      return (strips * length + sheets * breadth) / measure.step;
    });
    return ways.reduce((total, steps) => total + steps, sum);
  }, 0);
}

/** For each width, the lots of the lays that are as wide, or narrower by a kerf at most: the sum for all. */
function lotsWithin(
  kerf: number,
  lays: { readonly across: number; readonly lots: number }[],
): number {
  lays.sort((a, b) => a.across - b.across);
  let sum = 0;
  let near = 0;
  let first = 0;
  for (const [index, { across, lots }] of lays.entries()) {
    near += lots;
    for (; lays[first].across < across - kerf; first++) near -= lays[first].lots;
    if (lays[index + 1]?.across !== across) sum += near;
  }
  return sum;
}

function lots(size: number, room: number, most: number, measure: Measure): number {
  const steps = Math.max(1, stepsOf(size, measure));
  return lotsOf(0, steps, most, Math.floor(room / measure.step)).length;
}
