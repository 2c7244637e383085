import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import { lotsOf } from './lots.js';
import { type Measure, stepsOf } from './measure.js';
import type { TriedWidths } from './strip-family.js';

/** Lots that a width adds to those it shares with others, where slivers must be minded. */
const LOTS_OF_A_WIDTH = 3;

/**
 * About how many places a pass over the strips and sheets of boxes looks at, where remnants have no
 * value: each costs a step, and a byte of memory.
 * @param demand copies of each piece that are of use
 */
export function pricingSteps(
  boxes: readonly Box[],
  demand: readonly number[],
  { narrowest }: Limits,
  tried: TriedWidths,
  measure: Measure,
): number {
  const widthsOfLay = narrowest <= 1 ? 1 : tried === 'few' ? 2 : 3;
  const ownLots = narrowest <= 1 ? 0 : LOTS_OF_A_WIDTH;
  return boxes.reduce((sum, box) => {
    const ways = box.firstCuts.map((cuts) => {
      const straight = cuts === 'along';
      const [length, breadth] = straight ? [box.length, box.width] : [box.width, box.length];
      let strips = 0;
      let sheets = 0;
      for (const lay of box.lays) {
        const [along, across] = straight ? [lay.length, lay.width] : [lay.width, lay.length];
        if (along > length || across > breadth) continue;
        strips += lots(along, length, demand[lay.piece], measure) + widthsOfLay * ownLots;
        sheets += lots(across, breadth, demand[lay.piece], measure) * widthsOfLay;
      }
      return (strips * length + sheets * breadth) / measure.step;
    });
    return ways.reduce((total, steps) => total + steps, sum);
  }, 0);
}

function lots(size: number, room: number, most: number, measure: Measure): number {
  const steps = Math.max(1, stepsOf(size, measure));
  return lotsOf(0, steps, most, Math.floor(room / measure.step)).length;
}
