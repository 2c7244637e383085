import type { KeepRule, Piece, Shear, Sheet } from '@stripwright/nesting';
import { rackWorth } from '../order/keep-rule.js';
import { type Box, canHold } from './lays.js';

/** What cutting one blank alone from a stock comes to. */
export interface Saving {
  /** How many come out of it, at most as many as are wanted. */
  readonly pieces: number;
  /** Coins. */
  readonly coins: number;
  /** Part of the metal that they fill, up to 1. */
  readonly share: number;
}

/** What a stock is reckoned with. */
export interface Offer {
  readonly box: Box;
  /** How many there are of it. */
  readonly count: number;
  /** Coins that each stands for in the books. */
  readonly bookValue: number;
}

/** What metal costs and is worth. */
export interface Prices {
  /** Coins a square tick of sheet. */
  readonly metal: number;
  readonly keep: KeepRule | undefined;
}

/**
 * The coins of a square tick of the cheapest sheet that can be bought. Where no sheet
 * has a price, metal itself is what is saved: one coin a square tick.
 */
export function metalPrice(sheets: readonly Sheet[]): number {
  const rates = sheets.flatMap(({ canBuy, price, length, width }) =>
    canBuy === 0 || price === 0 ? [] : [price / (length * width)],
  );
  return rates.length === 0 ? 1 : Math.min(...rates);
}

/**
 * What a grid of one blank saves, the best of the ways it may lie: the price of the
 * metal that its pieces would take elsewhere, less what the stock stands for in the
 * books, and what is worth keeping of the rest. Undefined where none fits.
 */
export function savingOf(
  offer: Offer,
  piece: Piece,
  lays: readonly Box[],
  shear: Shear,
  prices: Prices,
): Saving | undefined {
  let best: Saving | undefined;
  for (const lay of lays) {
    if (!canHold(offer.box, lay, shear)) continue;
    const saving = gridSaving(offer, piece.quantity, lay, shear.kerf ?? 0, prices);
    if (best === undefined || saving.coins > best.coins) best = saving;
  }
  return best;
}

function gridSaving(
  { box, count, bookValue }: Offer,
  wanted: number,
  lay: Box,
  kerf: number,
  { metal, keep }: Prices,
): Saving {
  const rows = Math.floor((box.width + kerf) / (lay.width + kerf));
  const columns = Math.floor((box.length + kerf) / (lay.length + kerf));
  const each = Math.min(wanted, rows * columns);
  const used = Math.min(count, Math.ceil(wanted / each));
  const pieces = Math.min(wanted, used * each);
  const area = pieces * lay.length * lay.width;
  let kept = 0;
  if (keep !== undefined) {
    const filled = {
      length: Math.ceil(each / rows) * (lay.length + kerf),
      width: Math.min(each, rows) * (lay.width + kerf),
    };
    kept = worthOfRest(box, filled, keep);
  }
  return {
    pieces,
    coins: metal * area + used * (kept - bookValue),
    share: area / (used * box.length * box.width),
  };
}

/** What remains beside and beyond a filled corner, divided the better of two ways. */
function worthOfRest(box: Box, filled: Box, rule: KeepRule): number {
  const beyond = Math.max(0, box.length - filled.length);
  const beside = Math.max(0, box.width - filled.width);
  const across =
    rackWorth(beyond, box.width, rule) +
    rackWorth(Math.min(filled.length, box.length), beside, rule);
  const along =
    rackWorth(box.length, beside, rule) +
    rackWorth(beyond, Math.min(filled.width, box.width), rule);
  return Math.max(across, along);
}
