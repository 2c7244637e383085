import type { Box, Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { spreadLabels } from '../drawing/spread-labels.js';
import { TYPE, type Unit } from './paper.js';
import type { Rail } from './rail.js';
import type { Strips } from './strips.js';

/** Distances from the stock's edge, in millimetres of paper. */
const NIB = 1.6;
const FLAG = 4;
const FLAG_POINT = 1.6;
const GAP = 0.8;
const OVERHANG = 3;
/** A little clear of the next flag. */
const PITCH = LINE_HEIGHT + 0.12;

export interface CutNumbers {
  readonly marks: readonly Mark[];
  /** The numbers of first cuts that found no room. */
  readonly leftOut: readonly number[];
}

/** How much paper the numbers and distances need beside the stock. */
export function cutNumbersDepth(strips: Strips, print: (mm: number) => string): number {
  if (strips.firstCuts.length === 0) return 0;
  const widths = strips.firstCuts.map(({ at }) => textWidth(print(at - strips.start)) * TYPE.small);
  return flagEnd(strips, TYPE.small) + GAP + Math.max(...widths) + 1;
}

/**
 * A flag for every first-stage cut at the edge of the sheet: its number in the order of cutting,
 * and its distance from the lower or the left edge, once that is trimmed, as read on a rule laid
 * along it.
 */
export function cutNumbers(
  strips: Strips,
  rail: Rail,
  unit: Unit,
  page: Box,
  print: (mm: number) => string,
): CutNumbers {
  const room = { from: -OVERHANG * unit, to: strips.extent + OVERHANG * unit };
  const fits = (size: number): number => Math.floor((room.to - room.from) / (PITCH * size * unit));
  const size = strips.firstCuts.length <= fits(TYPE.small) ? TYPE.small : TYPE.least;
  const every = Math.max(1, Math.ceil(strips.firstCuts.length / Math.max(1, fits(size))));
  const kept = strips.firstCuts.filter((_, index) => index % every === 0);
  const centres = spreadLabels(
    kept.map(({ at }) => at),
    PITCH * size * unit,
    room.from,
    room.to,
  );
  const end = flagEnd(strips, size) * unit;
  const marks = kept.flatMap(({ order, at }, index): Mark[] => {
    const along = centres[index] ?? at;
    const half = (LINE_HEIGHT * size * unit) / 2;
    const number = String(order);
    const numberWidth = textWidth(number, true) * size * unit;
    const tail = FLAG_POINT * unit + FLAG * unit;
    const start = end - (end - tail) / 2 - numberWidth / 2;
    const label = { along, size: size * unit, room: page };
    return [
      {
        kind: 'line',
        points: [rail.at(at, 0), rail.at(at, NIB * unit), rail.at(along, FLAG * unit)],
        stroke: INK.firstCut,
        strokeWidth: 0.3 * unit,
      },
      {
        kind: 'polygon',
        role: 'flag',
        points: [
          rail.at(along, FLAG * unit),
          rail.at(along + half, tail),
          rail.at(along + half, end),
          rail.at(along - half, end),
          rail.at(along - half, tail),
        ],
        fill: INK.firstCut,
      },
      rail.text({
        ...label,
        role: 'cut-number',
        text: number,
        out: start,
        bold: true,
        colour: INK.paper,
      }),
      rail.text({
        ...label,
        role: 'cut-distance',
        text: print(at - strips.start),
        out: end + GAP * unit,
      }),
    ];
  });
  const flagged = new Set(kept.map(({ order }) => order));
  const leftOut = strips.firstCuts.flatMap(({ order }) => (flagged.has(order) ? [] : [order]));
  return { marks, leftOut };
}

/** Where all flags end, so that the distances stand in a column. */
function flagEnd(strips: Strips, size: number): number {
  const widest =
    Math.max(...strips.firstCuts.map(({ order }) => textWidth(String(order), true))) * size;
  return FLAG + FLAG_POINT + widest + 0.9;
}
