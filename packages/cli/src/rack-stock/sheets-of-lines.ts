import type { Rolling, Sheet, Stock } from '@stripwright/nesting';
import type { Fault } from '../faults/fault.js';
import type { RackStock } from '../rack/rack.js';

/** Whole sheets on the rack, and as the planner would take them. */
export interface Pile {
  readonly onRack: RackStock;
  readonly sheet: Sheet;
}

export interface SharedOut {
  /** The stock of the order, its sheets with those of the rack on hand. */
  readonly stock: readonly Stock[];
  /** The pile that a line of the order has its sheets on hand from, by the line's name. */
  readonly ofLines: ReadonlyMap<string, RackStock>;
  /** Piles of sizes that no line names. */
  readonly others: readonly Pile[];
  /** Lines that count themselves what the rack counts. */
  readonly faults: readonly Fault[];
}

/**
 * Gives the sheets on the rack to the lines of an order that are of their size and
 * rolling, in marks; one pile to a line, the older first. They are all of one metal.
 */
export function sheetsOfLines(stock: readonly Stock[], piles: readonly Pile[]): SharedOut {
  const ofLines = new Map<string, RackStock>();
  const faults: Fault[] = [];
  const left = [...piles];
  const { metal, thickness } = piles[0]?.sheet ?? {};
  const supplied = stock.map((line, index): Stock => {
    if (line.kind !== 'sheet' || line.metal !== metal || line.thickness !== thickness) return line;
    const place = left.findIndex(({ sheet }) => isSameSize(sheet, line));
    const [pile] = place < 0 ? [] : left.splice(place, 1);
    if (pile === undefined) return line;
    const { mark, count } = pile.onRack;
    if (line.onHand > 0) {
      const expected = `left out: the rack counts these sheets, ${count} under ${mark}`;
      faults.push({
        complaint: { code: 'disagrees', expected },
        path: ['sheets', index, 'on hand'],
      });
    }
    if (pile.sheet.onHand === 0) return line;
    ofLines.set(line.id, pile.onRack);
    const bookValue = line.bookValue ?? pile.sheet.bookValue;
    return {
      ...line,
      onHand: pile.sheet.onHand,
      ...(bookValue === undefined ? {} : { bookValue }),
    };
  });
  const others = left.filter(({ sheet }) => sheet.onHand > 0);
  return { stock: supplied, ofLines, others, faults };
}

function isSameSize(one: Sheet, other: Sheet): boolean {
  const [first, second] = [upright(one), upright(other)];
  return (
    first.length === second.length &&
    first.width === second.width &&
    first.rolling === second.rolling
  );
}

/** With the longer side as its length. */
function upright({ length, width, rolling }: Sheet) {
  if (length >= width) return { length, width, rolling };
  return { length: width, width: length, rolling: rolling && acrossOf(rolling) };
}

/** How the rolling lies, seen along the other side. */
export function acrossOf(rolling: Rolling): Rolling {
  return rolling === 'along' ? 'across' : 'along';
}
