import { describe, expect, test } from 'vitest';
import { stripEntry } from '../plan-file/strip-entry.js';
import { faultsOf, read, SMALL_ORDER } from './small-order.test.support.js';

/** The small order with handwork for the shop, and for its heart. */
function order(shop: string, heart: string): string {
  return SMALL_ORDER.replace('  tab: 1/2\n', `  tab: 1/2\n${shop}`).replace(
    '    across: 4 in\n',
    `    across: 4 in\n${heart}`,
  );
}

function stripsOf(text: string) {
  const { order, blanks } = read(text);
  return blanks.flatMap(({ cutter }) => (cutter ? [stripEntry(cutter, order.shop)] : []));
}

const SHOP = '  handwork: { notch angle: 40, shortest flat: 2 in, snip below: 2 in }\n';

test('what the shop gives holds for every cutter, field by field where a cutter gives its own', () => {
  const [heart, hexagon, house] = stripsOf(order(SHOP, '    handwork: { notch angle: 30 deg }\n'));
  expect(heart?.notches?.map(({ halfAngle }) => halfAngle)).toEqual([30, 30]);
  expect(house?.notches?.every(({ halfAngle }) => halfAngle === 40)).toBe(true);
  // The lobes of the heart have a radius of 1.1 in; the hexagon has a raw edge.
  expect(heart?.snips?.length).toBeGreaterThan(10);
  expect(hexagon?.snips).toEqual([]);
  const kinds = (strip: typeof heart) => strip?.warnings?.map(({ kind }) => kind);
  // Sides of the hexagon are 1.73 in, of the house 2, 1.95 and 3 in.
  expect(kinds(hexagon)).toEqual(Array(6).fill('short flat'));
  expect(kinds(heart)).not.toContain('short flat');
  expect(stripsOf(SMALL_ORDER).flatMap(kinds)).toEqual([]);
});

test('the stage of the hem is kept with the edge, and decides how wide a notch it needs', () => {
  const [closed] = stripsOf(order('', '    handwork: { hem stage: closed }\n'));
  const [square] = stripsOf(order('', '    handwork: { hem stage: square }\n'));
  expect([closed?.edge?.stage, square?.edge?.stage]).toEqual(['closed', 'square']);
  // The cleft closes the hem through 96 degrees.
  expect(closed?.warnings).toEqual([]);
  expect(square?.warnings).toMatchObject([{ kind: 'notch too narrow' }]);
  expect(square?.snips?.length).toBeGreaterThan(closed?.snips?.length ?? 0);
});

test('a curve must be as gentle as the shop says for parts to be joined on it', () => {
  const large = '  - { name: Wheel, outline: circle, across: 12 in, depth: 1 in, quantity: 1';
  const wheel = (rest: string) => SMALL_ORDER.replace('items:\n', `items:\n${large}${rest} }\n`);
  expect(read(wheel('')).blanks.filter(({ name }) => name.startsWith('Wheel'))).toHaveLength(2);
  // Whole again, since it cannot be divided: the planner tells what is too large.
  const uncut = read(wheel(', handwork: { gentle radius: 7 in }')).blanks;
  expect(uncut.filter(({ name }) => name.startsWith('Wheel'))).toHaveLength(1);
});

describe('what cannot be used is told with its line and field', () => {
  test.each([
    ['notch angle: 90', 'notch angle must be at most 89; found 90'],
    ['notch angle: -5', 'notch angle must be 0 or more; found -5'],
    ['notch angle: wide', 'notch angle must be a plain number such as 0.44; found wide'],
    ['hem strain: 0', 'hem strain must be above 0; found 0'],
    [
      'shortest flat: 3 ft',
      'shortest flat must be in inches (in), mm or cm, not in "ft"; found 3 ft',
    ],
    ['sharpest tip: 181', 'sharpest tip must be at most 180; found 181'],
    ['hem stage: open', 'hem stage must be closed or square; found open'],
    ['notch angel: 40', 'notch angel is not a known field; did you mean "notch angle"?'],
  ])('%s', (line, message) => {
    expect(faultsOf(order(`  handwork:\n    ${line}\n`, ''))).toEqual([
      `order.yaml:9: shop.handwork.${message}`,
    ]);
    const own = faultsOf(order('', `    handwork:\n      ${line}\n`));
    expect(own).toEqual([`order.yaml:27: items[0].handwork.${message}`]);
  });

  test('a section that is none', () => {
    expect(faultsOf(order('  handwork: careful\n', ''))).toEqual([
      'order.yaml:8: shop.handwork must be a section of "field: value" lines; found careful',
    ]);
  });
});
