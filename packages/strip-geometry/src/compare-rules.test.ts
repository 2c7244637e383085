import { expect, test } from 'vitest';
import { airframe } from './bend-rules/airframe.js';
import { neutralAxis } from './bend-rules/neutral-axis.js';
import { bendRules } from './bend-rules/rules.js';
import { zeroThickness } from './bend-rules/zero-thickness.js';
import { compareRules } from './compare-rules.js';
import { circle } from './outlines/circle.js';
import { rectangle } from './outlines/rectangle.js';

const cutter = { depth: 25, hem: 6, tab: 10 };
const metal = { thickness: 0.3, insideRadius: 0.4, factor: 0.44, metal: 'half hard' } as const;

// Common practice: a ring of the middle line. The inside circumference is short of it by pi T.
test('a circle is pi T longer by every rule that knows the thickness', () => {
  const outline = circle.draw({ across: 80 });
  const compared = compareRules(
    { ...cutter, outline },
    bendRules.map((kind) => kind.make(metal)),
  );
  expect(compared).toHaveLength(bendRules.length);
  for (const [index, row] of compared.entries()) {
    expect(row).toMatchObject({ rule: bendRules[index]?.name, bends: true });
    const more = index === 0 ? 0 : Math.PI * 0.3;
    expect(row.bends && row.difference).toBeCloseTo(more, 9);
    expect(row.bends && row.developed).toBeCloseTo(Math.PI * 80 + more, 9);
    expect(row.bends && row.length).toBeCloseTo(Math.PI * 80 + more + 10, 9);
  }
});

test('a rectangle differs by its four bends', () => {
  const outline = rectangle.draw({ long: 90, wide: 40 });
  const [bench, handMade, perDegree] = compareRules({ ...cutter, outline }, [
    zeroThickness(),
    neutralAxis(metal),
    airframe(metal),
  ]);
  // By hand, four square bends: 4 (pi / 2 (R + K T) - 2 R).
  const more = 4 * ((Math.PI / 2) * (0.4 + 0.44 * 0.3) - 2 * 0.4);
  expect(bench?.bends && bench.difference).toBe(0);
  expect(handMade?.bends && handMade.difference).toBeCloseTo(more, 9);
  const airframeMore = 4 * (90 * (0.01743 * 0.4 + 0.0078 * 0.3) - 2 * 0.4);
  expect(perDegree?.bends && perDegree.difference).toBeCloseTo(airframeMore, 9);
});

test('a rule by which the metal cannot follow is listed with the reason', () => {
  const outline = rectangle.draw({ long: 90, wide: 12 });
  const coarse = neutralAxis({ ...metal, insideRadius: 7 });
  const [first, second] = compareRules({ ...cutter, outline }, [coarse, neutralAxis(metal)]);
  expect(first).toMatchObject({ bends: false, reason: { name: 'BendError', code: 'no room' } });
  // The first that can be made is what others are compared with.
  expect(second?.bends && second.difference).toBe(0);
});

test('faults of the cutter itself are not hidden', () => {
  const outline = circle.draw({ across: 80 });
  expect(() => compareRules({ ...cutter, outline, depth: 0 }, [zeroThickness()])).toThrow('depth');
});
