import { type Strip, StripError, splitStrip } from '@stripwright/strip-geometry';
import { ticksDown, ticksUp } from '../length/ticks.js';
import type { CutterItem, Order } from './order.js';
import { isOfShopMetal } from './own-metal.js';

/**
 * A strip as it is cut: whole where some sheet or offcut of the order holds it,
 * or else in as few parts as fit. Whole as well where no parts fit: the planner
 * tells what is too large.
 */
export function dividedToFit(strip: Strip, item: CutterItem, order: Order): readonly Strip[] {
  const { mark } = order.shop.rule;
  const longest = longestStock(ticksUp(strip.width, mark), item, order);
  if (longest === undefined || ticksUp(strip.length, mark) <= longest) return [strip];
  try {
    return splitStrip(strip, longest * mark, item.handwork).map((part) => part.strip);
  } catch (error) {
    if (error instanceof StripError && error.field === 'stockLength') return [strip];
    throw error;
  }
}

/** The longest strip of a width that the stock holds; undefined where all is narrower. Ticks. */
function longestStock(width: number, { mayTurn }: CutterItem, order: Order): number | undefined {
  const { mark } = order.shop.rule;
  const trimmed = 2 * ticksUp(order.shop.shear.edgeTrim ?? 0, mark);
  const stock = [
    ...order.sheets.map((sheet) => ({ ...sheet, lost: trimmed })),
    ...order.offcuts.map((offcut) => ({ ...offcut, lost: 0 })),
  ].filter((entry) => isOfShopMetal(entry, order.shop));
  const lengths = stock.flatMap(({ size, lost }) => {
    const along = ticksDown(size.length, mark) - lost;
    const across = ticksDown(size.width, mark) - lost;
    return [...(across >= width ? [along] : []), ...(mayTurn && along >= width ? [across] : [])];
  });
  return lengths.length === 0 ? undefined : Math.max(...lengths);
}
