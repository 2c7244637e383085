import type { CutMap } from '../cut-map/cut-map.js';
import { letteredStrips } from '../cutting-list/cutting-list.js';
import { printLength, type Rule } from '../length/print-length.js';
import type { PlanFile, PlanFileStock } from '../plan-file/plan-file.js';
import { planOnFile } from '../plan-file/plan-on-file.js';
import { idOnRack } from '../rack-stock/id-on-rack.js';

/** What to draw for each layout of a plan, in its order. */
export function cutMaps(file: PlanFile): readonly CutMap[] {
  const { order, blanks, layouts, shear, stock: listed } = file;
  const onFile = planOnFile(file);
  const rule: Rule = { units: order.units, mark: order.smallestMark };
  const numbers = new Map(blanks.map(({ id }, index) => [id, index + 1]));
  return layouts.map(({ stock, count, pieces, cuts, remnants }, index) => ({
    title: order.name,
    number: index + 1,
    of: layouts.length,
    count,
    stock: {
      name: stock.id,
      kind: stock.kind,
      length: stock.length,
      width: stock.width,
      ...howItIsRolled(listed.find(({ id }) => id === stock.id)),
      ...whereItLies(listed.find(({ id }) => id === stock.id)),
    },
    pieces: pieces.map(({ blank, ...place }) => ({
      number: numbers.get(blank) ?? 0,
      name: blank,
      ...place,
    })),
    cuts,
    remnants,
    strips: letteredStrips(onFile, index),
    kerf: shear.kerf ?? 0,
    trim: stock.kind === 'sheet' ? (shear.trim ?? 0) : 0,
    stages: shear.stages ?? 2,
    printLength: (millimetres) => printLength(millimetres, rule),
  }));
}

const howItIsRolled = (stock: PlanFileStock | undefined) =>
  stock?.rolling === undefined ? {} : { rolled: stock.rolling };

/** What helps to find metal that is on the rack; sheets on hand may lie there in part. */
function whereItLies(stock: PlanFileStock | undefined) {
  if (stock?.mark === undefined) return {};
  const { id, mark, place } = stock;
  const words = [...(id === idOnRack(mark) ? [] : [idOnRack(mark)]), ...(place ? [place] : [])];
  return words.length === 0 ? {} : { lies: words.join(', ') };
}
