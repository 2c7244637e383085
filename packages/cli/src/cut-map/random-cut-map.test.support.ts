import fc from 'fast-check';
import type { CutMap } from './cut-map.js';

/** Names as shops may write them, and as no shop should. */
const NAMES = [
  'Heart, large',
  'Crescent',
  'Honeycomb hexagon',
  'Acorn',
  'W',
  'A "small" <b>boat</b> & its </text><script> ]]> --> sail',
  'קן ציפור 12',
  '🐻‍❄️👩‍👩‍👧‍👦 biscuit tin 🫖',
  `long ${'and longer '.repeat(30)}`,
  '',
  'tab\tline\nbreak\u0000\u0008\ud800 \u202egnorw',
  `tower${'\u0301'.repeat(20)}`,
] as const;

export const millimetres = (length: number): string => `${Math.round(length * 10) / 10} mm`;

/** Inches to the nearest 1/32, as a shop with a rule writes them. */
export function inches(length: number): string {
  const marks = Math.round((length / 25.4) * 32);
  const whole = Math.floor(marks / 32);
  let [over, under] = [marks % 32, 32];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  if (over === 0) return `${whole} in`;
  return `${whole === 0 ? '' : `${whole} `}${over}/${under} in`;
}

interface Strip {
  readonly share: number;
  readonly lengths: readonly number[];
  readonly trim: boolean;
}

interface Recipe {
  readonly stock: { readonly length: number; readonly width: number };
  readonly strips: readonly Strip[];
  readonly vertical: boolean;
  readonly topFirst: boolean;
  readonly names: readonly string[];
  readonly inch: boolean;
  readonly offcut: boolean;
  readonly kerf: number;
  readonly stages: 2 | 3 | 'free';
}

/** Strips and pieces of at least such a share of the stock; often some equal ones in a row. */
const strips = (leastWidth: number, leastLength: number): fc.Arbitrary<readonly Strip[]> => {
  const share = fc.double({ min: leastLength, max: 0.7, noNaN: true });
  const lengths = fc.oneof(
    fc.array(share, { maxLength: 12, size: 'max' }),
    fc.tuple(share, fc.nat(12)).map(([one, count]) => Array.from({ length: count }, () => one)),
  );
  const strip = fc.record({
    share: fc.double({ min: leastWidth, max: 0.5, noNaN: true }),
    lengths,
    trim: fc.boolean(),
  });
  const equal = fc
    .tuple(strip, fc.nat(24))
    .map(([one, count]) => Array.from({ length: count }, () => one));
  return fc.oneof(fc.array(strip, { maxLength: 24, size: 'max' }), equal);
};

const recipe: fc.Arbitrary<Recipe> = fc.record({
  stock: fc.record({
    length: fc.integer({ min: 60, max: 900 }),
    width: fc.integer({ min: 40, max: 700 }),
  }),
  strips: fc.oneof(strips(0.05, 0.2), strips(0.015, 0.02)),
  vertical: fc.boolean(),
  topFirst: fc.boolean(),
  names: fc.array(fc.oneof(fc.constantFrom(...NAMES), fc.string({ unit: 'binary' })), {
    minLength: 1,
    maxLength: 5,
  }),
  inch: fc.boolean(),
  offcut: fc.boolean(),
  kerf: fc.constantFrom(0, 0.4),
  stages: fc.constantFrom(2 as const, 3 as const, 'free' as const),
});

/** Two-stage layouts, some with a third trimming cut; strips along either axis. */
export const anyCutMap: fc.Arbitrary<CutMap> = recipe.map(cutMapOf);

function cutMapOf(recipe: Recipe): CutMap {
  const { stock, vertical, names } = recipe;
  const [along, across] = vertical ? [stock.width, stock.length] : [stock.length, stock.width];
  const pieces: Omit<CutMap['pieces'][number], 'number' | 'name'>[] = [];
  const first: CutMap['cuts'][number][] = [];
  const later: CutMap['cuts'][number][] = [];
  const remnants: CutMap['remnants'][number][] = [];
  const place = (x: number, y: number, length: number, width: number) =>
    vertical ? { x: y, y: x, length: width, width: length } : { x, y, length, width };
  const cut = (stage: 1 | 2 | 3, x1: number, y1: number, x2: number, y2: number) =>
    vertical ? { stage, x1: y1, y1: x1, x2: y2, y2: x2 } : { stage, x1, y1, x2, y2 };

  let y = 0;
  for (const strip of recipe.strips) {
    const width = Math.round(strip.share * across * 10) / 10;
    if (width < 1 || y + width >= across) continue;
    let x = 0;
    for (const share of strip.lengths) {
      const length = Math.round(share * along * 10) / 10;
      if (length < 1 || x + length >= along) continue;
      const kept = strip.trim ? width * 0.75 : width;
      pieces.push({ ...place(x, y, length, kept), turned: vertical });
      later.push(cut(2, x + length, y, x + length, y + width));
      if (strip.trim) {
        later.push(cut(3, x, y + kept, x + length, y + kept));
        remnants.push({ ...place(x, y + kept, length, width - kept), keep: false });
      }
      x += length;
    }
    remnants.push({ ...place(x, y, along - x, width), keep: along - x > 150 });
    y += width;
    first.push(cut(1, 0, y, along, y));
  }
  remnants.push({ ...place(0, y, along, across - y), keep: across - y > 20 });

  const numbers = new Map<string, number>();
  const numbered = pieces.map((piece) => {
    const size = `${piece.length.toFixed(3)} ${piece.width.toFixed(3)}`;
    const number = numbers.get(size) ?? numbers.size + 1;
    numbers.set(size, number);
    return { ...piece, number, name: names[number % names.length] ?? '' };
  });
  return {
    title: names[0] ?? '',
    number: 2,
    of: 5,
    count: 4,
    stock: { ...stock, name: names.at(-1) ?? '', kind: recipe.offcut ? 'offcut' : 'sheet' },
    pieces: numbered,
    cuts: [...(recipe.topFirst ? first.reverse() : first), ...later],
    remnants,
    kerf: recipe.kerf,
    stages: recipe.stages,
    printLength: recipe.inch ? inches : millimetres,
  };
}
