import type { CutMap } from '../cut-map/cut-map.js';
import { printLength, type Rule } from '../length/print-length.js';
import type { PlanFile } from '../plan-file/plan-file.js';

/** What to draw for each layout of a plan, in its order. */
export function cutMaps({ order, blanks, layouts, shear }: PlanFile): readonly CutMap[] {
  const rule: Rule = { units: order.units, mark: order.smallestMark };
  const numbers = new Map(blanks.map(({ id }, index) => [id, index + 1]));
  return layouts.map(({ stock, count, pieces, cuts, remnants }, index) => ({
    title: order.name,
    number: index + 1,
    of: layouts.length,
    count,
    stock: { name: stock.id, kind: stock.kind, length: stock.length, width: stock.width },
    pieces: pieces.map(({ blank, ...place }) => ({
      number: numbers.get(blank) ?? 0,
      name: blank,
      ...place,
    })),
    cuts,
    remnants,
    kerf: shear.kerf ?? 0,
    trim: stock.kind === 'sheet' ? (shear.trim ?? 0) : 0,
    stages: shear.stages ?? 2,
    printLength: (millimetres) => printLength(millimetres, rule),
  }));
}
