import { layOut } from '../../cut-map/lay-out.js';
import { oneLine } from '../../drawing/measure-text.js';
import { cutMaps } from '../../packet/cut-maps.js';
import type { Planned, Section } from '../job-sheet.js';

/** A cut map a layout, each on a page of its own. */
export function shear({ file }: Planned): readonly Section[] {
  return cutMaps(file).map((map) => ({
    id: `layout-${map.number}`,
    title: `Layout ${map.number}: cut ${map.count} of ${oneLine(map.stock.name)}`,
    onNewPage: true,
    blocks: [
      { kind: 'picture', drawing: layOut(map), trueScale: false },
      {
        kind: 'steps',
        steps: [
          {
            id: `layout-${map.number}-cut`,
            text: `Layout ${map.number}: cut ${map.count} like this`,
            detail: 'Number every piece as it comes off the shear.',
          },
        ],
      },
    ],
  }));
}
