import { CommandError, EXIT } from '../../exit-code.js';
import { complaintText } from '../../faults/fault-text.js';
import { notOnTheRack } from '../../rack/not-on-the-rack.js';
import { readOffcutMark } from '../../rack/offcut-mark.js';
import type { Rack, RackStock } from '../../rack/rack.js';

/** The mark as what a command works on. */
export const MARK_SUBJECT = { name: 'mark', meaning: 'the mark that is written on the metal' };

/**
 * What lies on the rack under a mark, as a person typed it.
 * @throws CommandError with the nearest marks there are
 */
export function markedStock(text: string, rack: Rack): RackStock {
  const mark = readOffcutMark(text);
  const stock = mark === undefined ? undefined : rack.find(mark);
  if (stock === undefined) throw noSuchMark(text, rack);
  return stock;
}

export function noSuchMark(text: string, rack: Rack): CommandError {
  const marks = rack.list().map((stock) => stock.mark);
  const complaint = notOnTheRack(text, marks);
  return new CommandError(EXIT.badInput, complaintText('mark', complaint, text));
}
