import type { Environment } from '../../environment.js';
import { EXIT, type ExitCode } from '../../exit-code.js';
import type { ShopUnits } from '../../length/unit.js';
import { marksTable } from '../../rack/marks-table.js';
import type { NewStock, RackStock } from '../../rack/rack.js';
import { stockEntry } from '../../rack/stock-entry.js';
import type { Given } from '../command.js';
import { withRack } from './open-rack.js';

/** Puts things on a rack, and prints what it has of them then. */
export async function putOnRack(
  stock: readonly NewStock[],
  given: Given,
  environment: Environment,
  print: {
    readonly units: ShopUnits;
    /** What else is to be said of them. */
    readonly remarks: (put: readonly RackStock[]) => readonly string[];
  },
): Promise<ExitCode> {
  const put = await withRack(given, environment, (rack) =>
    rack.add(stock).flatMap((mark) => rack.find(mark) ?? []),
  );
  const text = given.flag('json')
    ? JSON.stringify(put.map(stockEntry), null, 2)
    : [...marksTable(put, print.units), ...print.remarks(put)].join('\n');
  environment.stdout.write(`${text}\n`);
  return EXIT.done;
}
