import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLength } from './parse-length.js';
import { printLength, printSize, type Rule } from './print-length.js';
import { ticksToMillimetres } from './ticks.js';

const inch = (parts: number): Rule => ({ units: 'in', mark: 25.4 / parts });
const metric = (mark: number): Rule => ({ units: 'mm', mark });

describe('a length is printed as the shop reads its rule', () => {
  // Fractions in lowest terms (14/16 is read 7/8): Machining Fundamentals, 2004, p. 56.
  test.each<[millimetres: number, rule: Rule, text: string]>([
    [(25.4 * 14) / 16, inch(16), '7/8 in'],
    [(25.4 * 390) / 32, inch(32), '12 3/16 in'],
    [431.8, inch(32), '17 in'],
    [431.8000000001, inch(32), '17 in'],
    [0, inch(32), '0 in'],
    [25.4 / 64, inch(64), '1/64 in'],
    [25.4 / 64, inch(32), '0.0156 in'],
    [(25.4 * 3) / 32, { units: 'in', mark: (25.4 * 3) / 32 }, '3/32 in'],
    [25.4 * 1.23, { units: 'in', mark: 0.254 }, '1.23 in'],
    [41.275, metric(0.5), '41.275 mm'],
    [41.5, metric(0.5), '41.5 mm'],
    [711, metric(0.5), '711 mm'],
    [12.3456, metric(0.0001), '12.3456 mm'],
  ])('%d mm', (millimetres, rule, text) => {
    expect(printLength(millimetres, rule)).toBe(text);
  });

  test('a size names its unit once', () => {
    expect(printSize(711.2, 508, inch(32))).toBe('28 x 20 in');
  });
});

test('what is printed reads back as the same mark', () => {
  const rules = fc.constantFrom(
    inch(8),
    inch(16),
    inch(32),
    inch(64),
    inch(100),
    inch(12),
    metric(1),
    metric(0.5),
    metric(0.1),
    metric(0.25),
  );
  fc.assert(
    fc.property(rules, fc.integer({ min: 0, max: 30_000 }), (rule, ticks) => {
      const printed = printLength(ticksToMillimetres(ticks, rule.mark), rule);
      const read = parseLength(printed, rule.units === 'in' ? 'mm' : 'in');
      expect(read).toMatchObject({ ok: true });
      expect(read.ok && Math.round(read.value / rule.mark)).toBe(ticks);
    }),
  );
});
