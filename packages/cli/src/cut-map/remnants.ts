import { around, boxOf, grown, shared } from '../drawing/box.js';
import type { Box, Hatch, Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import type { CutMap } from './cut-map.js';
import { TYPE, type Unit } from './paper.js';
import { printSize } from './print-size.js';
import { readingFrame } from './reading-frame.js';

export const KEEP_WORDS = 'offcut, keep';
export const SCRAP_WORD = 'scrap';

export interface Remnants {
  readonly hatches: readonly Hatch[];
  readonly shapes: readonly Mark[];
  readonly labels: readonly Mark[];
}

/** Patterns are named by the layout, so that several maps can share one web page. */
export const hatchId = (layout: number, keep: boolean): string =>
  `layout-${layout}-${keep ? 'keep' : 'scrap'}`;

/** Offcuts to keep under wide single hatching, scrap under close crossed hatching. */
export function drawRemnants(map: CutMap, unit: Unit): Remnants {
  const shapes = map.remnants.map((remnant): Mark => {
    return {
      kind: 'rect',
      role: remnant.keep ? 'keep' : 'scrap',
      box: boxOf(remnant),
      fill: `url(#${hatchId(map.number, remnant.keep)})`,
      stroke: INK.soft,
      strokeWidth: 0.15 * unit,
    };
  });
  const labels = map.remnants.flatMap((remnant) => {
    const size = printSize(remnant, map.printLength);
    const wordings = remnant.keep ? [[KEEP_WORDS, size], [size], ['keep']] : [[SCRAP_WORD]];
    return label(boxOf(remnant), wordings, unit);
  });
  return { hatches: hatchesOf(map.number, unit), shapes, labels };
}

function hatchesOf(layout: number, unit: Unit): readonly Hatch[] {
  const pen = { stroke: INK.hatch, strokeWidth: 0.18 * unit };
  const keep = { spacing: 2.6 * unit, ground: INK.keepGround, crossed: false };
  const scrap = { spacing: 1.4 * unit, ground: INK.scrapGround, crossed: true };
  return [
    { id: hatchId(layout, true), ...keep, ...pen },
    { id: hatchId(layout, false), ...scrap, ...pen },
  ];
}

/** Hatching to leave in sight at the ends and along the sides, in millimetres of paper. */
const ENDS = 2;
const SIDES = 0.6;
const SIZES = [TYPE.small, 2.4, TYPE.least] as const;
const GAP = 1.2;

/** The first wording that fits, on one line or one below the other, on a clear ground. */
function label(box: Box, wordings: readonly (readonly string[])[], unit: Unit): readonly Mark[] {
  const frame = readingFrame(box);
  const long = frame.long - 2 * ENDS * unit;
  const short = frame.short - 2 * SIDES * unit;
  for (const words of wordings) {
    const widths = words.map((word) => textWidth(word));
    const total = widths.reduce((sum, width) => sum + width + GAP, -GAP);
    for (const size of SIZES.map((each) => each * unit)) {
      const line = LINE_HEIGHT * size;
      if (line <= short && total * size <= long) {
        let s = (frame.long - total * size) / 2;
        const texts = words.map((text, index) => {
          const mark = frame.text({ role: 'remnant', text, s, t: frame.short / 2, size });
          s += ((widths[index] ?? 0) + GAP) * size;
          return mark;
        });
        return onPlate(box, texts, unit);
      }
      if (line * words.length <= short && Math.max(...widths) * size <= long) {
        const first = (frame.short - (words.length - 1) * line) / 2;
        const texts = words.map((text, index) =>
          frame.text({
            role: 'remnant',
            text,
            s: frame.long / 2,
            t: first + index * line,
            size,
            anchor: 'middle',
          }),
        );
        return onPlate(box, texts, unit);
      }
    }
  }
  return [];
}

function onPlate(box: Box, texts: readonly (Mark & { kind: 'text' })[], unit: Unit): Mark[] {
  // Clear of the cuts along the edges.
  const within = grown(box, -0.5 * unit);
  const plate = shared(grown(around(texts.map((text) => text.box)), 0.4 * unit), within);
  return [{ kind: 'rect', role: 'plate', box: plate, fill: INK.paper }, ...texts];
}
