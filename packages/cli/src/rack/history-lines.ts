import type { ShopUnits } from '../length/unit.js';
import { type Column, table, wrap } from '../report/table.js';
import type { RackEvent, RackJob, RackStock } from './rack.js';
import { dayOf, metalWords, sizeWords } from './stock-words.js';

const COLUMNS: readonly Column[] = [
  { heading: 'Date', align: 'left' },
  { heading: 'What', align: 'left' },
  { heading: 'Count', align: 'right' },
  { heading: 'Promised', align: 'right' },
  { heading: 'For', align: 'left', shrinks: true },
];

/** All that happened to one thing on the rack, oldest first. */
export function historyLines(
  stock: RackStock,
  events: readonly RackEvent[],
  jobs: readonly RackJob[],
  units: ShopUnits,
): readonly string[] {
  const names = new Map(jobs.map(({ number, name }) => [number, name]));
  const lines = table(
    COLUMNS,
    events.map(({ at, deed, change, promisedChange, job }) => [
      dayOf(at),
      deed,
      signed(change),
      signed(promisedChange),
      job === undefined ? '' : (names.get(job) ?? `job ${job}`),
    ]),
  );
  const [heading = '', ...rows] = lines;
  return [
    ...wrap(headWords(stock, units), '  '),
    heading,
    ...rows.flatMap((row, index) => {
      const note = events[index]?.note ?? '';
      return note === '' ? [row] : [row, ...wrap(`${NOTE_INDENT}${note}`, NOTE_INDENT)];
    }),
  ];
}

const NOTE_INDENT = ' '.repeat('  YYYY-MM-DD  '.length);

/** `CCY: an offcut of 17 1/2 x 6 in, tinplate, 0.011 in thick; in the left rack` */
function headWords(stock: RackStock, units: ShopUnits): string {
  const { mark, kind, name, place, origin, count } = stock;
  const what = kind === 'offcut' ? 'an offcut of ' : `${name}, whole sheets of `;
  const told = [
    `${mark}: ${what}${sizeWords(stock, units)}, ${metalWords(stock, units)}`,
    ...(place === '' ? [] : [`place: ${place}`]),
    ...(origin === '' ? [] : [`from: ${origin}`]),
    ...(count === 0 ? ['gone'] : kind === 'sheets' ? [`${count} there`] : []),
  ];
  return told.join('; ');
}

function signed(change: number): string {
  if (change === 0) return '';
  return change > 0 ? `+${change}` : `${change}`;
}
