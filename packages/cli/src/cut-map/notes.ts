import type { CutMap } from './cut-map.js';
import { printSize } from './print-size.js';

/** The offcuts to keep, equal ones counted; nothing if there are none. */
export function offcutNote({ remnants, printLength }: CutMap): string | undefined {
  const counts = new Map<string, number>();
  for (const remnant of remnants.filter(({ keep }) => keep)) {
    const size = printSize(remnant, printLength);
    counts.set(size, (counts.get(size) ?? 0) + 1);
  }
  if (counts.size === 0) return undefined;
  const words = [...counts].map(([size, count]) => (count === 1 ? size : `${count} of ${size}`));
  return `Offcuts to keep: ${words.join('; ')}.`;
}

interface Row {
  readonly number: number;
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/**
 * Where the pieces lie that are too small to hold their number: the lower left corner of each, or
 * of a row of equal ones side by side, from the lower left corner of the stock.
 */
export function unnumberedNote(
  pieces: CutMap['pieces'],
  print: (millimetres: number) => string,
): string | undefined {
  if (pieces.length === 0) return undefined;
  const rows: Row[] = [];
  const ordered = [...pieces].sort((one, other) => one.y - other.y || one.x - other.x);
  for (const { number, x, y, length } of ordered) {
    const last = rows.at(-1);
    const follows = last?.number === number && last.y === y && Math.abs(last.to - x) < 0.01;
    if (last !== undefined && follows) {
      rows[rows.length - 1] = { ...last, to: x + length, count: last.count + 1 };
    } else {
      rows.push({ number, y, from: x, to: x + length, count: 1 });
    }
  }
  const words = rows.map(({ number, y, from, count }) => {
    const many = count === 1 ? '' : ` (${count} in a row)`;
    return `No. ${number}${many} ${print(from)} right, ${print(y)} up`;
  });
  return `Too small for a number, by the lower left corner: ${words.join('; ')}.`;
}

/** Says so if strip widths or cut numbers had to be left out. */
export function leftOutNote(leftOut: {
  readonly widths: number;
  readonly numbers: number;
}): string | undefined {
  const parts = [
    ...(leftOut.widths > 0 ? [`${leftOut.widths} strip widths`] : []),
    ...(leftOut.numbers > 0 ? [`${leftOut.numbers} numbers of first cuts`] : []),
  ];
  return parts.length === 0 ? undefined : `Left out for want of room: ${parts.join(' and ')}.`;
}

export const CAUTION =
  'Take care. Sheared edges cut: wear gloves and eye protection. Keep the shear’s guard in place ' +
  'and hands clear of the blade and the hold-down. Metal and solder that touch food must be fit ' +
  'for food; wash before use. Follow local codes and licensed practice.';
