import {
  BendError,
  bounds,
  edgeTreatments,
  families,
  type Metal,
  makeStrip,
  metalNamed,
  neutralAxis,
  type Outline,
  OutlineError,
  type OutlineFamily,
  type OutlineSizes,
  placeSeam,
  StripError,
  seams,
  zeroThickness,
} from '@stripwright/strip-geometry';
import fc from 'fast-check';
import type { Rule } from '../length/print-length.js';
import type { Cutter } from '../order/strips.js';
import { stripEntry } from '../plan-file/strip-entry.js';
import { outlinePlaces } from './outline-places.js';
import type { TemplateToDraw } from './template-pages.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const anyLetter = fc.constantFrom(...'ABCDEFGHIJKLMNOPQRSTUVWXYZ');

/** Names as an order may have them: any text without control characters, and some that mean harm. */
export const anyName = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.constantFrom(
    'Heart',
    '"><script>alert(1)</script>',
    "]]>&amp;<!-- '",
    '../../etc/passwd',
    'لب القلب ١٢ (صغير)',
    'עוגיה 12 (גדולה) <b>',
    '🍪👩‍🍳🏴󠁧󠁢󠁥󠁮󠁧󠁿',
    'Żółć łąka Ångström Ελλάδα Пекарня',
    'W'.repeat(300),
    `${'very '.repeat(60)}long`,
    '\u202Eemordnilap',
    '日本のクッキー',
  ),
);

/** Cutters of every family, 30 to 200 mm large, with every edge and every seam. */
export const anyTemplate: fc.Arbitrary<TemplateToDraw> = fc
  .record({
    family: fc.constantFrom(...families),
    size: between(30, 200),
    letter: anyLetter,
    stretch: between(0.85, 1.15),
    depth: fc.oneof(between(10, 40), between(40, 150)),
    edge: fc.constantFrom(...edgeTreatments),
    seam: fc.constantFrom(...seams),
    hemFace: fc.constantFrom('inside', 'outside'),
    hemStage: fc.constantFrom('closed', 'square'),
    thick: fc.boolean(),
    units: fc.constantFrom('in', 'mm'),
    number: fc.integer({ min: 1, max: 400 }),
    name: anyName,
  })
  .map((made) => orUndefined(() => templateOf(made)))
  .filter((template) => template !== undefined);

interface Made {
  readonly family: OutlineFamily;
  readonly size: number;
  readonly letter: string;
  readonly stretch: number;
  readonly depth: number;
  readonly edge: (typeof edgeTreatments)[number];
  readonly seam: (typeof seams)[number];
  readonly hemFace: 'inside' | 'outside';
  readonly hemStage: 'closed' | 'square';
  readonly thick: boolean;
  readonly units: 'in' | 'mm';
  readonly number: number;
  readonly name: string;
}

function templateOf(made: Made): TemplateToDraw {
  const rule: Rule = { units: made.units, mark: made.units === 'in' ? 25.4 / 32 : 0.5 };
  const outline = outlineOf(made);
  const { edge, seam, hemFace, depth } = made;
  const strip = makeStrip({
    outline,
    depth,
    hem: 0,
    tab: 0,
    edge: edge.make(edge.example),
    seam: seam.make(seam.example),
    hemFace,
    bendRule: made.thick
      ? neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 })
      : zeroThickness(),
  });
  const handwork = { hemStage: made.hemStage };
  const cutter: Cutter = { family: made.family.name, outline, strip, handwork };
  const placed = placeSeam(outline, strip.seam);
  return {
    number: made.number,
    name: made.name,
    shape: {
      outline: placed,
      strip,
      places: outlinePlaces(placed.segments, [strip], 0),
      isPart: false,
    },
    entry: stripEntry(cutter, { rule, metal: tinplate() }),
    notches: handwork,
    rule,
  };
}

function tinplate(): Metal {
  const metal = metalNamed('tinplate');
  if (metal === undefined) throw new Error('no tinplate');
  return metal;
}

function outlineOf({ family, size, letter, stretch }: Made): Outline {
  const [first] = family.sizes.filter(({ kind }) => kind === 'length');
  const sized = (scale: number): OutlineSizes =>
    Object.fromEntries(
      Object.entries(family.example).map(([name, value]) => {
        const kind = family.sizes.find((field) => field.name === name)?.kind;
        if (kind === 'letter') return [name, letter];
        if (typeof value === 'object') {
          return [name, value.map(({ x, y }) => ({ x: x * scale, y: y * scale }))];
        }
        if (kind !== 'length' || typeof value !== 'number') return [name, value];
        return [name, value * scale * (name === first?.name ? stretch : 1)];
      }),
    );
  const { across, high } = bounds(family.draw(sized(1)));
  return family.draw(sized(size / Math.max(across, high)));
}

/** Nothing where no such cutter can be made. */
function orUndefined<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (error) {
    if (
      error instanceof OutlineError ||
      error instanceof StripError ||
      error instanceof BendError
    ) {
      return undefined;
    }
    throw error;
  }
}
