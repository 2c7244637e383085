import { placeSeam, type Strip } from '@stripwright/strip-geometry';
import type { Planned } from '../job-sheet/job-sheet.js';
import type { CutterItem, Order } from '../order/order.js';
import type { Blank, Cutter } from '../order/strips.js';
import { outlinePlaces } from './outline-places.js';
import type { TemplateToDraw } from './template-pages.js';

/** The templates of a plan: one for each strip that is bent, with the number of its blank. */
export function templatesToDraw({ sized, file }: Planned): readonly TemplateToDraw[] {
  const { order, blanks } = sized;
  return blanks.flatMap((blank, index) => {
    const { cutter } = blank;
    const entry = file.blanks[index]?.strip;
    if (cutter === undefined || entry === undefined) return [];
    const { strip, handwork, part } = cutter;
    const parts =
      part === undefined ? [strip] : partsOf(blanks, index - (part.number - 1), part.of);
    const { seamAt, cornerAngle } = itemOf(order, cutter) ?? {};
    const placed = placeSeam(cutter.outline, strip.seam, seamAt, cornerAngle);
    const own = part === undefined ? 0 : part.number - 1;
    return [
      {
        number: index + 1,
        name: blank.name,
        shape: {
          outline: placed,
          strip,
          places: outlinePlaces(placed.segments, parts, own, cornerAngle),
          isPart: part !== undefined,
        },
        entry,
        notches: handwork,
        rule: order.shop.rule,
      },
    ];
  });
}

/** The strips that are joined to one cutter: blanks that follow each other. */
function partsOf(blanks: readonly Blank[], first: number, count: number): readonly Strip[] {
  return blanks.slice(first, first + count).flatMap(({ cutter }) => (cutter ? [cutter.strip] : []));
}

function itemOf({ items }: Order, { outline }: Cutter): CutterItem | undefined {
  return items.find(
    (item): item is CutterItem => item.kind === 'cutter' && item.outlines.includes(outline),
  );
}
