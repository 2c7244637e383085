import { table } from './table.js';

/** Things that lie on the rack, to be found there. */
export interface RackRow {
  readonly count: number;
  readonly mark: string;
  /** As the shop writes it. */
  readonly size: string;
  /** Empty where nobody told. */
  readonly place: string;
}

/** A table of things on the rack, with their places where any is told. */
export function rackTable(rows: readonly RackRow[]): readonly string[] {
  const isPlaced = rows.some(({ place }) => place !== '');
  return table(
    [
      { heading: 'Count', align: 'right' },
      { heading: 'Mark', align: 'left' },
      { heading: 'Size', align: 'left' },
      ...(isPlaced ? [{ heading: 'Place', align: 'left', shrinks: true } as const] : []),
    ],
    rows.map(({ count, mark, size, place }) => [
      `${count}`,
      mark,
      size,
      ...(isPlaced ? [place] : []),
    ]),
  );
}
