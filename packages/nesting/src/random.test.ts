import { describe, expect, it } from 'vitest';
import { seededRandom } from './random.js';

describe('seededRandom', () => {
  it('repeats itself for the same seed and differs for another', () => {
    const draw = (seed: number) => {
      const random = seededRandom(seed);
      return Array.from({ length: 5 }, random);
    };
    expect(draw(1)).toEqual(draw(1));
    expect(draw(1)).not.toEqual(draw(2));
  });

  it('fills the range from 0 to 1 evenly', () => {
    for (const seed of [0, 1, 0x61c88647, 2 ** 32]) {
      const random = seededRandom(seed);
      const tenths = new Array(10).fill(0);
      for (let i = 0; i < 10_000; i++) tenths[Math.floor(random() * 10)]++;
      expect(Math.min(...tenths)).toBeGreaterThan(850);
      expect(Math.max(...tenths)).toBeLessThan(1150);
    }
  });
});
