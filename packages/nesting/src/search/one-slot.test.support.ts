import { piece, sheet } from '../plan-cutting.test.support.js';
import { groundOf } from './ground.test.support.js';

/** The ground of pieces of one width, cut from bands of one slot. */
export function groundOfOneSlot(
  [length, width]: readonly [length: number, width: number],
  lengths: readonly number[],
  quantities: readonly number[],
) {
  const { ground } = groundOf({
    pieces: lengths.map((each, i) => piece(`p${i}`, each, width, Math.max(1, quantities[i]))),
    stock: [sheet('s', length, 3 * width, { price: 7 })],
    shear: { firstCut: 'along' },
  });
  return ground;
}
