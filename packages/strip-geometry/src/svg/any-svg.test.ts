import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seededRandom } from '../fitting/traced.test.support.js';
import { bounds, perimeter, signedArea } from '../measure.js';
import { OutlineError } from '../outline-error.js';
import { readSvg, type SvgOptions } from './read-svg.js';
import { SvgError } from './svg-error.js';

const number = fc.oneof(
  { arbitrary: fc.integer({ min: -100, max: 200 }).map(String), weight: 150 },
  {
    arbitrary: fc.constantFrom('0', '.5', '-1e3', '1e-9', '1e9', '1e400', 'NaN', '', '--1'),
    weight: 1,
  },
);
const words = (least: number, most = least) =>
  fc.array(number, { minLength: least, maxLength: most }).map((all) => all.join(' '));
const length = fc
  .tuple(
    number,
    fc.constantFrom(...Array.from({ length: 15 }, () => ''), 'mm', 'in', '%', 'em', 'pt'),
  )
  .map((parts) => parts.join(''));

const counts = { L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2 } as const;
const command = fc.oneof(
  ...Object.entries(counts).map(([letter, count]) => words(count).map((all) => letter + all)),
  fc
    .tuple(words(3), fc.constantFrom('0 0', '0 1', '1 0', '11', '2 0'), words(2))
    .map((parts) => `A${parts.join(' ')}`),
);
const pathData = fc
  .tuple(
    words(2),
    fc.array(fc.tuple(command, fc.boolean()), { maxLength: 6 }),
    fc.constantFrom('Z', 'z', 'Z', 'z', 'Z', ''),
  )
  .map(
    ([start, commands, end]) =>
      `M${start}${commands.map(([text, small]) => (small ? text.toLowerCase() : text)).join('')}${end}`,
  );

const transform = fc.oneof(
  ...['translate(9 5)', 'rotate(30)', 'scale(2 -1)', 'skewX(20)', 'matrix(1 2 -3 1 5 5)'].map(
    fc.constant,
  ),
  fc
    .tuple(fc.constantFrom('translate', 'scale', 'rotate', 'skewY', 'matrix', 'spin'), words(1, 6))
    .map(([name, numbers]) => `${name}(${numbers})`),
);
const sometimes = (name: string, value: fc.Arbitrary<string>) =>
  fc.option(value, { freq: 1 }).map((text) => (text === null ? '' : ` ${name}="${text}"`));
const shared = fc
  .tuple(
    sometimes('transform', transform),
    sometimes('id', fc.constantFrom('a', 'b', 'c', 'heart')),
    sometimes(
      'style',
      fc.constantFrom(
        'display:none',
        'fill:red',
        'visibility:hidden',
        'fill:blue',
        'fill:#123',
        'mask:url(#a)',
      ),
    ),
  )
  .map((all) => all.join(''));
const withAttributes = (name: string, attributes: Readonly<Record<string, fc.Arbitrary<string>>>) =>
  fc
    .tuple(
      shared,
      ...Object.entries(attributes).map(([key, value]) => value.map((v) => ` ${key}="${v}"`)),
    )
    .map((all) => `<${name}${all.join('')}/>`);

const anyShape = fc.oneof(
  { arbitrary: withAttributes('path', { d: pathData }), weight: 4 },
  withAttributes('polygon', { points: words(0, 12) }),
  withAttributes('polyline', { points: words(0, 12) }),
  withAttributes('rect', { x: length, width: length, height: length, rx: length }),
  withAttributes('circle', { cx: length, r: length }),
  withAttributes('ellipse', { cy: length, rx: length, ry: length }),
  withAttributes('use', { href: fc.constantFrom('#a', '#b', '#c', 'other.svg', '') }),
  fc.constantFrom('<text>Hi</text>', '<image/>', '<svg/>', '<title>x</title>', '<line x2="5"/>'),
);
const anyGroup = fc
  .tuple(
    fc.constantFrom('g', 'g', 'a', 'defs', 'symbol', 'clipPath'),
    shared,
    fc.array(anyShape, { maxLength: 3 }),
  )
  .map(([name, attributes, shapes]) => `<${name}${attributes}>${shapes.join('')}</${name}>`);
const anySvg = fc
  .tuple(
    sometimes('width', length),
    sometimes('height', length),
    sometimes('viewBox', words(3, 5)),
    fc.array(fc.oneof({ arbitrary: anyShape, weight: 3 }, anyGroup), {
      minLength: 1,
      maxLength: 3,
    }),
  )
  .map(([width, height, box, shapes]) => `<svg${width}${height}${box}>${shapes.join('\n')}</svg>`);

/** A sound file, for mutation. */
const SOUND = `<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" width="4in" height="90mm" viewBox="0 0 100 90">
<g transform="translate(3 4) rotate(9)"><path id="heart" d="M50 88L10 40A25 25 0 0 1 50 15a25 25 0 0 1 40 25z"/>
<path d="M0 0C10 0 20 5 20 20S10 40 0 40Q-5 30 0 20T0 0"/></g><circle cx="10%" cy="2mm" r="9"/></svg>`;
const character = fc.constantFrom(...'<>/"= \'0159.-eEMmLlAaCcZz&;#%(),\u0000\u00e9\ud83c');
const anyMutation = fc
  .array(
    fc.record({
      at: fc.nat({ max: SOUND.length }),
      drop: fc.nat({ max: 8 }),
      put: fc.array(character, { maxLength: 4 }),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((edits) =>
    edits.reduce(
      (text, { at, drop, put }) => text.slice(0, at) + put.join('') + text.slice(at + drop),
      SOUND,
    ),
  );

/** A traced outline about 0, 0: round, wavy, toothed, stepped or rough, in up to a thousand lines. */
const anyTrace = fc
  .record({
    count: fc.integer({ min: 60, max: 990 }),
    radius: fc.constantFrom(2, 15, 40, 300),
    waves: fc.integer({ min: 0, max: 60 }),
    high: fc.constantFrom(0, 0.3, 1.5),
    rough: fc.constantFrom(0, 0.05, 0.1, 0.3, 1),
    step: fc.constantFrom(0, 0, 0.1, 0.25),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ count, radius, waves, high, rough, step, seed }) => {
    const random = seededRandom(seed);
    const onGrid = (value: number) => (step === 0 ? value : Math.round(value / step) * step);
    return Array.from({ length: count }, (__, index) => {
      const angle = (2 * Math.PI * index) / count;
      const reach = radius + high * Math.sin(waves * angle) + rough * random();
      return [reach * Math.cos(angle), reach * Math.sin(angle)]
        .map((value) => onGrid(value).toFixed(3))
        .join(' ');
    }).join(' L');
  });
const anyTraces = fc
  .array(anyTrace, { minLength: 1, maxLength: 20 })
  .map(
    (traces) =>
      `<svg width="800mm" viewBox="0 0 800 800">${traces
        .map((data, index) => `<path transform="translate(${700 * index} 0)" d="M${data}Z"/>`)
        .join('\n')}</svg>`,
  );

const anyOptions: fc.Arbitrary<SvgOptions> = fc.constantFrom<SvgOptions[]>(
  {},
  {},
  { across: 80 },
  { high: 1e-3 },
  { across: 80, high: 80 },
  { ignore: ['text', 'images', 'open paths'] },
  { ignore: ['text', 'images', 'open paths'], across: 60 },
  { ignore: ['open paths'], fit: 'always', tolerance: 0.5, across: 50 },
);

/** Reads the file; what comes of it must be sound outlines, or an error that says why. */
function outcome(text: string, options: SvgOptions): string {
  try {
    const outlines = readSvg(text, options);
    expect(outlines.length).toBeGreaterThan(0);
    for (const outline of outlines) {
      const figures = [perimeter(outline), signedArea(outline), ...Object.values(bounds(outline))];
      expect(figures.every(Number.isFinite), text).toBe(true);
      expect(signedArea(outline)).toBeGreaterThan(0);
    }
    return 'read';
  } catch (error) {
    if (error instanceof SvgError || error instanceof OutlineError) {
      expect(error.message.length).toBeGreaterThan(20);
      expect(error.message).not.toMatch(/undefined|\[object|NaN mm/);
      return error.code;
    }
    throw error;
  }
}

test.each([
  ['random', anySvg],
  ['mutated', anyMutation],
])('5,000 %s files are read, or refused with a reason', (_, any) => {
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(any, anyOptions, (text, options) => {
      const code = outcome(text, options);
      seen.set(code, (seen.get(code) ?? 0) + 1);
    }),
    { numRuns: 5000, endOnFailure: true },
  );
  // The files are neither all good nor all refused for one reason.
  expect(seen.get('read') ?? 0).toBeGreaterThan(100);
  expect(seen.size).toBeGreaterThan(6);
});

test('60 files of up to 20 noisy traces are fitted, or refused with a reason', () => {
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(anyTraces, (text) => {
      const code = outcome(text, {});
      seen.set(code, (seen.get(code) ?? 0) + 1);
    }),
    { numRuns: 60, endOnFailure: true },
  );
  expect(seen.get('read') ?? 0).toBeGreaterThan(3);
  expect(seen.get('too many bends') ?? 0).toBeGreaterThan(3);
});
