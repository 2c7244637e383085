import {
  makeStrip,
  metalNamed,
  placeSeam,
  regularPolygon,
  zeroThickness,
} from '@stripwright/strip-geometry';
import { stripEntry } from '../plan-file/strip-entry.js';
import { outlinePlaces } from './outline-places.js';
import type { TemplateToDraw } from './template-pages.js';

/** Ten sides of 1 5/8 in and a tab of 3/4 in: a strip of 17 in, by arithmetic. */
export function seventeenInches(): TemplateToDraw {
  const inch = 25.4;
  const outline = regularPolygon.draw({ sides: 10, side: 1.625 * inch });
  const making = { outline, depth: inch, hem: 0, tab: 0.75 * inch, bendRule: zeroThickness() };
  const strip = makeStrip(making);
  const rule = { units: 'in', mark: inch / 32 } as const;
  const metal = metalNamed('tinplate');
  if (metal === undefined) throw new Error('no tinplate');
  const placed = placeSeam(outline, strip.seam);
  const cutter = { family: 'regular polygon', outline, strip, handwork: {} };
  return {
    number: 1,
    name: 'Ten sides',
    shape: {
      outline: placed,
      strip,
      places: outlinePlaces(placed.segments, [strip], 0),
      isPart: false,
    },
    entry: stripEntry(cutter, { rule, metal }),
    notches: {},
    rule,
  };
}
