import type { CutMap } from './cut-map.js';
import { printSize } from './print-size.js';
import type { Strips } from './strips.js';

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

/** What is trimmed off first, and what the cuts turn to dust; nothing for a shear that does neither. */
export function dustNote({ kerf = 0, trim = 0, printLength }: CutMap): string | undefined {
  const parts = [
    ...(trim > 0
      ? [`First trim ${printLength(trim)} off every edge; distances run from the trimmed edges.`]
      : []),
    ...(kerf > 0
      ? [`Every cut turns ${printLength(kerf)} beyond its line to dust, which is left white.`]
      : []),
  ];
  return parts.length === 0 ? undefined : parts.join(' ');
}

/** What the letters beside the strips are; nothing where there are none. */
export function lettersNote({ spans }: Strips): string | undefined {
  return spans.length > 1 && spans.some(({ letter }) => letter !== undefined)
    ? 'Letters: what the cutting list calls strips that are cut further.'
    : undefined;
}

/** Says so if strip widths had to be left out. */
export function leftOutNote(widths: number): string | undefined {
  return widths === 0 ? undefined : `Left out for want of room: widths of strips (${widths}).`;
}

/** Common practice in a metal shop; the map defers to the shop's own rules. */
export const CAUTION =
  'Take care. Sheared edges cut: wear gloves and eye protection. Keep the shear’s guard in place ' +
  'and hands clear of the blade and the hold-down. Metal and solder that touch food must be fit ' +
  'for food; wash before use. Follow local codes and licensed practice.';
