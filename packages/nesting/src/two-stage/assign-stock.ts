import type { Layout } from '../plan.js';
import type { CuttingProblem } from '../problem.js';
import type { StockClass } from '../stock-classes.js';
import type { FilledSheet } from './filled-sheets.js';
import { layOut } from './lay-out.js';
import type { Faces } from './strip-families.js';

/**
 * Gives each filled sheet a sheet or offcut of its class, those first that cost
 * least. Offcuts take the layouts that are cut least often, so that few layouts
 * are parted between two stocks.
 */
export function assignStock(
  sheets: readonly FilledSheet[],
  problem: CuttingProblem,
  faces: Faces,
  classes: readonly StockClass[],
): readonly Layout[] {
  const layouts: Layout[] = [];
  classes.forEach((entry, g) => {
    const waiting = sheets
      .filter((sheet) => faces.faces[sheet.face].stockClass === g)
      .map((sheet) => ({ sheet, left: sheet.count }));
    const taken = new Map<string, Map<FilledSheet, number>>();
    for (const supply of entry.supplies) {
      let available = supply.count;
      const order = [...waiting].sort((a, b) =>
        supply.count === 1 ? a.left - b.left : b.left - a.left,
      );
      for (const item of order) {
        const count = Math.min(item.left, available);
        if (count === 0) continue;
        item.left -= count;
        available -= count;
        const counts = taken.get(supply.stock) ?? new Map<FilledSheet, number>();
        taken.set(supply.stock, counts);
        counts.set(item.sheet, (counts.get(item.sheet) ?? 0) + count);
      }
    }
    for (const [stock, counts] of taken) {
      for (const [sheet, count] of counts) {
        layouts.push(layOut(sheet, stock, count, problem, faces, classes));
      }
    }
  });
  return layouts;
}
