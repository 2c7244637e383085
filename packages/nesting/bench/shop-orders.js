/**
 * Invented orders of a shop that makes cutters: strips in a few widths and many
 * lengths, two sizes of sheet, a rack of offcuts. The same for the same seed. A tick
 * is half a millimetre, a coin a cent.
 */
import { seededRandom } from '../dist/random.js';

const SHEETS = [
  { id: 'large', length: 2000, width: 1280, price: 1150 },
  { id: 'small', length: 1424, width: 1024, price: 690 },
];
/** The least and the most of a strip's width, of its length, and of an offcut's sides. */
const WIDTHS = [44, 110];
const LENGTHS = [200, 1200];
const OFFCUT_LENGTHS = [300, 1100];
const OFFCUT_WIDTHS = [60, 700];
/** A blade takes a millimetre, and what is parted must be a centimetre wide. */
const SAW = { kerf: 2, narrowestStrip: 20 };
/** About half of what new metal costs. */
const KEEP = { leastLength: 400, leastWidth: 100, coinsPerMillion: 200, trouble: 15 };

/**
 * @param seed of the random numbers
 * @param widths of strips, so many
 * @param types of pieces, each of another length
 * @param quantities [least, most] of each
 * @param offcuts in the rack
 * @param keep true where what is left over is worth something
 * @param saw true where a saw cuts it
 */
export function shopOrder({
  seed,
  widths,
  types,
  quantities,
  offcuts = 12,
  keep = false,
  saw = false,
}) {
  const random = seededRandom(seed * 7919);
  const between = ([least, most]) => least + Math.floor(random() * (most - least + 1));
  const depths = different(widths, () => between(WIDTHS));
  const lengths = different(types, () => between(LENGTHS));
  const pieces = lengths.map((length, index) => ({
    id: `strip ${index + 1}`,
    length,
    width: depths[Math.floor(random() * widths)],
    quantity: between(quantities),
    mayTurn: true,
  }));
  const rack = Array.from({ length: offcuts }, (_, index) => ({
    kind: 'offcut',
    id: `offcut ${index + 1}`,
    length: between(OFFCUT_LENGTHS),
    width: between(OFFCUT_WIDTHS),
  }));
  return {
    pieces,
    stock: [
      ...SHEETS.map((sheet) => ({ kind: 'sheet', ...sheet, onHand: 0, canBuy: 'any' })),
      ...rack,
    ],
    shear: { firstCut: 'either', stages: 2, ...(saw ? SAW : {}) },
    ...(keep ? { keep: [KEEP] } : {}),
  };
}

/** So many numbers, none of them twice. */
function different(count, draw) {
  const numbers = new Set();
  while (numbers.size < count) numbers.add(draw());
  return [...numbers];
}

/** A small order, for what cannot cope with more: a few large pieces, and no offcut. */
export function smallOrder({ seed, types }) {
  const random = seededRandom(seed * 7919);
  const between = ([least, most]) => least + Math.floor(random() * (most - least + 1));
  const pieces = Array.from({ length: types }, (_, index) => ({
    id: `blank ${index + 1}`,
    length: between([350, 1000]),
    width: between([200, 600]),
    quantity: between([1, 4]),
    mayTurn: true,
  }));
  return {
    pieces,
    stock: SHEETS.map((sheet) => ({ kind: 'sheet', ...sheet, onHand: 0, canBuy: 'any' })),
    shear: { firstCut: 'either', stages: 2 },
  };
}
