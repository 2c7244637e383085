import { describe, expect, it } from 'vitest';
import { fitPaper, PAPER } from './paper.js';

describe('paper', () => {
  it('leaves 10 mm margins on A4 and on Letter', () => {
    // ISO 216: A4 is 210 x 297 mm. ANSI/ASME Y14.1 size A, Letter: 8 1/2 x 11 in.
    const sheets = [
      { width: 210, height: 297 },
      { width: 8.5 * 25.4, height: 11 * 25.4 },
    ];
    for (const sheet of sheets) {
      expect(PAPER.width).toBeLessThanOrEqual(sheet.width - 20);
      expect(PAPER.height).toBeLessThanOrEqual(sheet.height - 20);
    }
  });

  it('fits the longer or the taller need', () => {
    expect(fitPaper({ length: 300, width: 10 }, { across: 40, down: 100 })).toBe(2);
    expect(fitPaper({ length: 10, width: 318 }, { across: 40, down: 100 })).toBe(2);
  });
});
