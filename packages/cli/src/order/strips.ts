import {
  BendError,
  type CutterSpec,
  makeStrip,
  type Outline,
  type Seam,
  type Strip,
  StripError,
  seams,
} from '@stripwright/strip-geometry';
import type { Fault } from '../faults/fault.js';
import { inUnits } from '../length/in-units.js';
import { LONGEST_MILLIMETRES } from '../length/parse-length.js';
import { ticksUp } from '../length/ticks.js';
import { dividedToFit } from './divided-strip.js';
import { fieldWords } from './field-words.js';
import type { Handwork } from './handwork.js';
import type { CutterItem, Item, Order, Rolled, Shop } from './order.js';
import { outlineNames } from './outline-names.js';

/** A rectangle to cut: the flat strip of a cutter, part of one, or a plain rectangle. */
export interface Blank {
  readonly name: string;
  /** Ticks, rounded up. */
  readonly length: number;
  /** Ticks, rounded up. */
  readonly width: number;
  readonly quantity: number;
  readonly mayTurn: boolean;
  /** How its metal must be rolled, seen along its length; absent where it does not matter. */
  readonly rolled?: Rolled | undefined;
  /** Extra copies that are welcome where they cost nothing. */
  readonly spares?: number | undefined;
  /** Absent for a plain rectangle. */
  readonly cutter?: Cutter;
}

/** What a cutter is bent to, and the strip that it is bent from. */
export interface Cutter {
  /** The name of its outline family, or the file of its drawing. */
  readonly family: string;
  readonly outline: Outline;
  readonly strip: Strip;
  readonly handwork: Handwork;
  /** Where the strip is one of several that are joined end to end. */
  readonly part?: Part;
}

export interface Part {
  /** From 1. */
  readonly number: number;
  readonly of: number;
}

/** An order with the blanks of its items, ready for planning. */
export interface SizedOrder {
  readonly order: Order;
  readonly blanks: readonly Blank[];
}

/** Sizes the blanks of every item, or tells which items give none. */
export function sizeBlanks(order: Order): { readonly blanks: Blank[]; readonly faults: Fault[] } {
  const blanks: Blank[] = [];
  const faults: Fault[] = [];
  const firsts = new Map<string, number>();
  order.items.forEach((item, index) => {
    const path = ['items', index];
    try {
      const own = blanksOf(item, order);
      if (own.some(({ length, width }) => isTooLong(Math.max(length, width), order.shop))) {
        const reason = `its strip is longer than ${LONGEST_MILLIMETRES / 1000} m`;
        faults.push({ complaint: { code: 'strip', reason }, path });
        return;
      }
      for (const { name } of own) {
        const first = firsts.get(name);
        if (first !== undefined) {
          const complaint = { code: 'duplicate name', first: ['items', first] } as const;
          faults.push({ complaint, path: [...path, 'name'], found: name });
        }
        firsts.set(name, index);
      }
      blanks.push(...own);
    } catch (error) {
      if (!(error instanceof StripError) && !(error instanceof BendError)) throw error;
      const isItems = error instanceof StripError && item.kind === 'cutter';
      const field = isItems ? faultyField(error, item.seam) : undefined;
      const reason = inUnits(error.message, order.shop.rule.units);
      const complaint = { code: 'strip', reason } as const;
      faults.push({ complaint, path: [...path, ...(field === undefined ? [] : [field])] });
    }
  });
  return { blanks, faults };
}

function isTooLong(ticks: number, { rule }: Shop): boolean {
  return ticks * rule.mark > LONGEST_MILLIMETRES;
}

/** The blanks of one item: one for each outline, or more where its strip is longer than the stock. */
function blanksOf(item: Item, order: Order): readonly Blank[] {
  const { shop } = order;
  if (item.kind === 'rectangle') {
    const { name, quantity, mayTurn, rolled, spares, size } = item;
    const up = (length: number) => ticksUp(length, shop.rule.mark);
    const [length, width] = [up(size.length), up(size.width)];
    return [{ name, quantity, mayTurn, rolled, spares, length, width }];
  }
  const names = outlineNames(item);
  return item.outlines.flatMap((outline, index) => {
    const strip = stripOf(item, outline, shop);
    const parts = dividedToFit(strip, item, order);
    const name = names[index] ?? item.name;
    return parts.map((part, number) =>
      parts.length === 1
        ? cutterBlank(item, { name, outline, strip: part }, shop)
        : cutterBlank(
            item,
            { name, outline, strip: part, part: { number: number + 1, of: parts.length } },
            shop,
          ),
    );
  });
}

/** The blank of a strip or of one part of it. */
export function cutterBlank(
  { family, quantity, mayTurn, rolled, spares, handwork }: CutterItem,
  { name, outline, strip, part }: Omit<Cutter, 'family' | 'handwork'> & { readonly name: string },
  { rule }: Pick<Shop, 'rule'>,
): Blank {
  return {
    name: part === undefined ? name : `${name}, part ${part.number} of ${part.of}`,
    quantity,
    mayTurn,
    rolled,
    spares,
    length: ticksUp(strip.length, rule.mark),
    width: ticksUp(strip.width, rule.mark),
    cutter: { family, outline, strip, handwork, ...(part === undefined ? {} : { part }) },
  };
}

/**
 * The flat strip of one outline of an item.
 * @throws StripError, BendError where its outline and edges give no strip
 */
export function stripOf(
  item: CutterItem,
  outline: Outline,
  { bendRule }: Pick<Shop, 'bendRule'>,
): Strip {
  return makeStrip({ ...specOf(item), outline, bendRule });
}

/** An item as the geometry takes it, whatever its outline and the metal. */
export function specOf({
  depth,
  edge,
  hemFace,
  seam,
  seamAt,
  sizeIs,
  cornerAngle,
}: CutterItem): Omit<CutterSpec, 'outline' | 'bendRule'> {
  return {
    depth,
    hem: edge.allowance,
    tab: seam.atEnd,
    edge,
    hemFace,
    seam,
    sizeIs,
    ...(seamAt === undefined ? {} : { seamAt }),
    ...(cornerAngle === undefined ? {} : { cornerAngle }),
  };
}

/** The field of an order that a strip or its bends are refused for. */
export function faultyField(error: StripError | BendError, seam: Seam): string | undefined {
  // A seam that fits nowhere is told as the tab, whatever its length is called.
  const own = seams.find(({ name }) => name === seam.name)?.sizes[0]?.name ?? 'seam';
  return error.field === 'tab' ? own : error.field && fieldWords(error.field);
}
