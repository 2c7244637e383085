import { describe, expect, it } from 'vitest';
import { INK, tint } from './ink.js';

/** Relative luminance and contrast ratio as Web Content Accessibility Guidelines 2.2 define them. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

const grounds = [INK.paper, ...[0, 1, 2, 3, 4, 5].map(tint)];

describe('inks and tints', () => {
  it('set text off from every ground by 7 to 1, the enhanced contrast (success criterion 1.4.6)', () => {
    for (const ground of grounds) expect(contrast(INK.text, ground)).toBeGreaterThanOrEqual(7);
    expect(contrast(INK.paper, INK.firstCut)).toBeGreaterThanOrEqual(7);
  });

  it('set lines off by 3 to 1, the contrast of graphics (success criterion 1.4.11)', () => {
    for (const ground of [...grounds, INK.keepGround, INK.scrapGround]) {
      expect(contrast(INK.firstCut, ground)).toBeGreaterThanOrEqual(3);
      expect(contrast(INK.laterCut, ground)).toBeGreaterThanOrEqual(3);
      expect(contrast(INK.soft, ground)).toBeGreaterThanOrEqual(3);
    }
  });

  it('give a number one tint, whatever the number', () => {
    expect(tint(7)).toBe(tint(1));
    expect(tint(-1)).toBe(tint(5));
  });
});
