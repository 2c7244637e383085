import { layOut } from '../../cut-map/lay-out.js';
import { oneLine } from '../../drawing/measure-text.js';
import { cutMaps } from '../../packet/cut-maps.js';
import type { Planned, Section } from '../job-sheet.js';
import { CUTTING } from './cautions.js';

/** The layouts to shear, then the cut map of each on a page of its own. */
export function shear({ file }: Planned): readonly Section[] {
  const maps = cutMaps(file);
  return [
    {
      id: 'shear',
      title: 'Shear the sheets',
      onNewPage: false,
      blocks: [
        CUTTING,
        {
          kind: 'steps',
          steps: maps.map(({ number, count, stock, pieces }) => ({
            id: `shear-${number}`,
            text: `Layout ${number}: cut ${count} of ${oneLine(stock.name)}`,
            detail: `${pieces.length} on each. Number every piece as it comes off the shear.`,
          })),
        },
      ],
    },
    ...maps.map(
      (map): Section => ({
        id: `layout-${map.number}`,
        title: `Layout ${map.number}: cut ${map.count} of ${oneLine(map.stock.name)}`,
        onNewPage: true,
        blocks: [{ kind: 'picture', drawing: layOut(map), trueScale: false }],
      }),
    ),
  ];
}
