import { describe, expect, it } from 'vitest';
import { printSize } from './print-size.js';
import { inches, millimetres } from './random-cut-map.test.support.js';

describe('printing a size', () => {
  it('gives a shared unit once', () => {
    expect(printSize({ length: 273.05, width: 31.75 }, inches)).toBe('10 3/4 × 1 1/4 in');
    expect(printSize({ length: 711, width: 32.5 }, millimetres)).toBe('711 × 32.5 mm');
    expect(printSize({ length: 1, width: 2 }, (length) => `${length}"`)).toBe('1 × 2"');
  });

  it('keeps units that differ, and lengths without one', () => {
    const mixed = (length: number) => (length > 9 ? `${length / 10} cm` : `${length} mm`);
    expect(printSize({ length: 20, width: 5 }, mixed)).toBe('2 cm × 5 mm');
    expect(printSize({ length: 20, width: 5 }, String)).toBe('20 × 5');
    expect(printSize({ length: 20, width: 5 }, () => 'none')).toBe('none × none');
  });
});
