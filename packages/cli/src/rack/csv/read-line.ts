import { accept, type Reading, refuse } from '../../faults/reading.js';
import type { ShopUnits } from '../../length/unit.js';
import { type Coins, parsePrice } from '../../money.js';
import { MOST, readChoice, readCount } from '../../order/fields.js';
import type { Rolled } from '../../order/order.js';
import { ROLLED } from '../../order/stock-schema.js';
import { METAL_NAMES, metalSpelt, readThickness, USUAL_METAL } from '../../order/thickness.js';
import { unguarded } from '../../spreadsheet/cell-guard.js';
import { decimalPoint } from '../../spreadsheet/decimal-point.js';
import type { Separator } from '../../spreadsheet/separator.js';
import { notOnTheRack } from '../not-on-the-rack.js';
import { readOffcutMark } from '../offcut-mark.js';
import type { MergeLine, RackStock } from '../rack.js';
import { readRackText } from '../rack-text.js';
import { longerFirst, readStockSide, stockThickness } from '../read-stock-size.js';
import { usualSheetName } from '../sheet-name.js';
import type { Shelf } from './read-csv.js';
import type { RowReader } from './row-reader.js';

const KINDS: Readonly<Record<string, RackStock['kind']>> = {
  offcut: 'offcut',
  offcuts: 'offcut',
  sheets: 'sheets',
  sheet: 'sheets',
};

/**
 * What one line of a table says of the rack. Columns that are not there leave what has
 * a mark as it is. Undefined where anything is wrong, which the row has noted.
 */
export function readLineOfRack(
  row: RowReader,
  separator: Separator,
  units: ShopUnits,
  shelf: Shelf,
): MergeLine | undefined {
  const stock = row.value<RackStock | undefined>('mark', {
    absent: () => accept(undefined),
    blank: () => accept(undefined),
    read: (text) => readMark(text, shelf),
  });
  /** Reads a cell; without its column, what the rack says, or `usual` of what is new. */
  const cell = <T>(
    column: Parameters<RowReader['value']>[0],
    now: (stock: RackStock) => T,
    usual: Reading<T>,
    read: (text: string) => Reading<T>,
    blank: Reading<T> = usual,
  ): T | undefined =>
    row.value<T>(column, {
      absent: () => (stock === undefined ? usual : accept(now(stock))),
      blank: () => blank,
      read,
    });
  const decimal = (text: string) => decimalPoint(text, separator);
  const text = (column: 'name' | 'place' | 'from', now: (stock: RackStock) => string) =>
    cell(column, now, accept(''), (written) => readRackText(unguarded(written)));
  const side = (column: 'length' | 'width') =>
    cell<number>(
      column,
      (one) => one[column],
      refuse({ code: 'missing', hint: 'a length such as 17 1/2 in' }),
      (written) => readStockSide(decimal(written), units),
    );

  const kind = readKind(row, stock);
  const name = text('name', (one) => one.name);
  const length = side('length');
  const width = side('width');
  const metal = cell<string>(
    'metal',
    (one) => one.metal,
    accept(USUAL_METAL),
    (written) => readChoice(written, METAL_NAMES),
    stock === undefined ? accept(USUAL_METAL) : refuse({ code: 'missing', hint: 'its name' }),
  );
  const thickness = cell<number | undefined>(
    'thickness',
    (one) => one.thickness,
    accept(undefined),
    (written) => {
      const read = readThickness(decimal(written), metalSpelt(metal), units);
      return read.ok ? stockThickness(read.value) : read;
    },
  );
  const rolled = cell<Rolled | undefined>(
    'rolled',
    (one) => one.rolled,
    accept(undefined),
    (written) => readChoice(written, ROLLED),
  );
  const place = text('place', (one) => one.place);
  const origin = text('from', (one) => one.origin);
  const bookValue = cell<Coins | undefined>(
    'value',
    (one) => one.bookValue,
    accept(undefined),
    (written) => parsePrice(decimal(written)),
  );
  const count = cell<number>(
    'count',
    (one) => one.count,
    accept(1),
    (written) => readCount(written, 1, kind === 'offcut' ? 1 : MOST),
    stock?.kind === 'sheets' ? refuse({ code: 'missing', hint: 'how many' }) : accept(1),
  );
  if (kind === 'offcut' && name !== undefined && name !== '') {
    row.complain('name', { code: 'disagrees', expected: 'left empty, as offcuts have marks only' });
  }
  if (row.faults.length > 0) return undefined;
  // Whatever is undefined by now has been noted, or is not known of it.
  if (kind === undefined || length === undefined || width === undefined) return undefined;
  if (metal === undefined || count === undefined) return undefined;
  const size = { ...longerFirst(length, width), metal };
  return {
    ...(stock === undefined ? {} : { mark: stock.mark }),
    line: row.line,
    kind,
    name: kind === 'sheets' ? name || usualSheetName(size, units) : '',
    ...size,
    ...(thickness === undefined ? {} : { thickness }),
    ...(rolled === undefined ? {} : { rolled }),
    place: place ?? '',
    origin: origin ?? '',
    ...(bookValue === undefined ? {} : { bookValue }),
    count,
  };
}

function readKind(row: RowReader, stock: RackStock | undefined): RackStock['kind'] | undefined {
  const now = accept(stock?.kind ?? 'offcut');
  const kind = row.value<RackStock['kind']>('kind', {
    absent: () => now,
    blank: () => now,
    read: (text) => {
      const word = readChoice(text, Object.keys(KINDS));
      const known = word.ok ? KINDS[word.value] : undefined;
      return known === undefined
        ? refuse({ code: 'not a choice', choices: ['offcut', 'sheets'] })
        : accept(known);
    },
  });
  if (kind !== undefined && stock !== undefined && kind !== stock.kind) {
    row.complain('kind', { code: 'disagrees', expected: `${stock.kind}, as on the rack` });
  }
  return kind;
}

function readMark(text: string, shelf: Shelf): Reading<RackStock> {
  const written = text.replace(/^'/, '');
  const mark = readOffcutMark(written);
  const stock = mark === undefined ? undefined : shelf.find(mark);
  // Sheets of a size may come again, an offcut that was cut never.
  const isThere = stock !== undefined && (stock.count > 0 || stock.kind === 'sheets');
  return isThere ? accept(stock) : refuse(notOnTheRack(written, shelf.marks()));
}
