import {
  BendError,
  makeStrip,
  type Outline,
  type Strip,
  StripError,
  seams,
} from '@stripwright/strip-geometry';
import type { Fault } from '../faults/fault.js';
import { LONGEST_MILLIMETRES } from '../length/parse-length.js';
import { ticksUp } from '../length/ticks.js';
import { fieldWords } from './field-words.js';
import type { CutterItem, Item, Order, Shop } from './order.js';

/** A rectangle to cut: the flat strip of a cutter, or a plain rectangle. */
export interface Blank {
  /** 1 for the first item of the order; written on the cut map. */
  readonly number: number;
  readonly name: string;
  /** Ticks, rounded up. */
  readonly length: number;
  /** Ticks, rounded up. */
  readonly width: number;
  readonly quantity: number;
  readonly mayTurn: boolean;
  /** Absent for a plain rectangle. */
  readonly cutter?: Cutter;
}

/** What a cutter is bent to, and the strip that it is bent from. */
export interface Cutter {
  /** The name of its outline family. */
  readonly family: string;
  readonly outline: Outline;
  readonly strip: Strip;
}

/** An order with the blanks of its items, ready for planning. */
export interface SizedOrder {
  readonly order: Order;
  readonly blanks: readonly Blank[];
}

/** Sizes the blank of every item, or tells which items give none. */
export function sizeBlanks(order: Order): { readonly blanks: Blank[]; readonly faults: Fault[] } {
  const blanks: Blank[] = [];
  const faults: Fault[] = [];
  order.items.forEach((item, index) => {
    try {
      const blank = sizeBlank(item, index + 1, order.shop);
      if (Math.max(blank.length, blank.width) * order.shop.rule.mark <= LONGEST_MILLIMETRES) {
        blanks.push(blank);
      } else {
        const reason = `its strip is longer than ${LONGEST_MILLIMETRES / 1000} m`;
        faults.push({ complaint: { code: 'strip', reason }, path: ['items', index] });
      }
    } catch (error) {
      if (!(error instanceof StripError) && !(error instanceof BendError)) throw error;
      const isItems = error instanceof StripError && item.kind === 'cutter';
      const field = isItems ? faultyField(error, item) : undefined;
      const complaint = { code: 'strip', reason: error.message } as const;
      faults.push({
        complaint,
        path: ['items', index, ...(field === undefined ? [] : [field])],
      });
    }
  });
  return { blanks, faults };
}

/**
 * The blank of one item.
 * @throws StripError, BendError where its outline and edges give no strip
 */
export function sizeBlank(
  item: Item,
  number: number,
  shop: Pick<Shop, 'rule' | 'bendRule'>,
): Blank {
  const { mark } = shop.rule;
  const { name, quantity, mayTurn } = item;
  const base = { number, name, quantity, mayTurn };
  if (item.kind === 'rectangle') {
    const { length, width } = item.size;
    return { ...base, length: ticksUp(length, mark), width: ticksUp(width, mark) };
  }
  const strip = stripOf(item, shop);
  return {
    ...base,
    length: ticksUp(strip.length, mark),
    width: ticksUp(strip.width, mark),
    cutter: { family: item.family, outline: item.outline, strip },
  };
}

function stripOf(
  { outline, depth, edge, hemFace, seam, seamAt, sizeIs, cornerAngle }: CutterItem,
  { bendRule }: Pick<Shop, 'bendRule'>,
): Strip {
  return makeStrip({
    outline,
    depth,
    bendRule,
    hem: edge.allowance,
    tab: seam.atEnd,
    edge,
    hemFace,
    seam,
    sizeIs,
    ...(seamAt === undefined ? {} : { seamAt }),
    ...(cornerAngle === undefined ? {} : { cornerAngle }),
  });
}

/** The field of an order that a strip or its bends are refused for. */
export function faultyField(
  error: StripError | BendError,
  { seam }: CutterItem,
): string | undefined {
  // A seam that fits nowhere is told as the tab, whatever its length is called.
  const own = seams.find(({ name }) => name === seam.name)?.sizes[0]?.name ?? 'seam';
  return error.field === 'tab' ? own : error.field && fieldWords(error.field);
}
