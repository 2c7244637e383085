import { cuttingOf, offcutOf, plannedOf, sheetsOf } from './planned-cutting.test.support.js';
import type { PlannedCutting, Rack, RackStock } from './rack.js';
import { RackError } from './rack-error.js';

/** From 0 to below 1. */
type Random = () => number;

/** The plan of a random order, over what is free on the rack. */
export function randomCutting(rack: Rack, name: string, random: Random): PlannedCutting {
  const free = rack.list({ free: true });
  const taken = free.filter(() => random() < 3 / Math.max(3, free.length)).slice(0, 4);
  const bought = { stock: plannedOf(undefined, sheetsOf(1), { bought: 5 }), times: 3 };
  const cuts = taken.map((stock) => {
    const times = stock.kind === 'offcut' ? 1 : 1 + Math.floor(random() * freeOf(stock));
    return { stock: plannedOf(stock.mark, stock, { fromRack: times }), times };
  });
  return cuttingOf(name, cuts.length === 0 || random() < 0.2 ? [...cuts, bought] : cuts);
}

const freeOf = ({ count, promised }: RackStock) => count - promised;

/**
 * Does something to a rack: puts things on it, books plans whole and in part, undoes,
 * imports, corrects.
 * @param name of a plan, if the deed makes one; never used before
 * @returns what was done; `refused` where the rack would not
 */
export function randomDeed(rack: Rack, name: string, random: Random): string {
  const draw = random();
  try {
    if (draw < 0.25) return `added ${rack.add([offcutOf(), sheetsOf(2), offcutOf()]).join(' ')}`;
    if (draw < 0.5) {
      rack.book(randomCutting(rack, name, random));
      return `booked ${name}`;
    }
    if (draw < 0.65) {
      rack.book(randomCutting(rack, name, random), [{ layout: 0, times: 1 }]);
      return `booked ${name} in part`;
    }
    if (draw < 0.8) return `undone ${rack.undo().booking}`;
    if (draw < 0.85) return `held ${rack.hold(randomCutting(rack, name, random)).number}`;
    const lines = rack
      .list()
      .slice(0, 20)
      .map((stock, line) => ({
        ...stock,
        place: `place ${Math.floor(random() * 9)}`,
        line,
      }));
    const { added } = rack.merge([...lines, { ...offcutOf(), line: 99 }]);
    return `imported ${added.join(' ')}`;
  } catch (error) {
    if (error instanceof RackError) return `refused: ${error.code}`;
    throw error;
  }
}
