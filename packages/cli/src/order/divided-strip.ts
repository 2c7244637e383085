import { type Strip, StripError, splitStrip } from '@stripwright/strip-geometry';
import { ticksDown, ticksUp } from '../length/ticks.js';
import type { CutterItem, Order } from './order.js';

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
  const lengths = [...order.sheets, ...order.offcuts].flatMap(({ size }) => {
    const along = ticksDown(size.length, mark);
    const across = ticksDown(size.width, mark);
    return [...(across >= width ? [along] : []), ...(mayTurn && along >= width ? [across] : [])];
  });
  return lengths.length === 0 ? undefined : Math.max(...lengths);
}
