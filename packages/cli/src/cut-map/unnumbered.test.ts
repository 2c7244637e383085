import { describe, expect, it } from 'vitest';
import { millimetres } from './random-cut-map.test.support.js';
import { drawUnnumbered } from './unnumbered.js';

const area = { left: 0, top: 0, width: 10_000, unit: 1 };
const strips = { extent: 300, start: 0, spans: [], firstCuts: [] };
const at = (number: number, x: number, y: number) => ({
  ...{ number, name: 'Acorn', length: 20, width: 10, turned: false },
  ...{ x, y },
});
const lines = (cutsRun: 'x' | 'y', pieces: readonly ReturnType<typeof at>[]) =>
  drawUnnumbered(pieces, { ...strips, cutsRun }, 'places', millimetres, area)
    .marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    .slice(1);

describe('pieces too small for a number', () => {
  it('are told strip by strip, equal neighbours counted', () => {
    const row = [at(4, 40, 50), at(3, 0, 50), at(3, 20, 50), at(3, 70, 50), at(3, 0, 60)];
    expect(lines('x', row)).toEqual([
      '50 mm up: 2 of No. 3 at 0 mm; No. 4 at 40 mm; No. 3 at 70 mm.',
      '60 mm up: No. 3 at 0 mm.',
    ]);
  });

  it('are told from left to right where strips stand', () => {
    expect(lines('y', [at(3, 30, 0), at(3, 30, 10)])).toEqual(['30 mm right: 2 of No. 3 at 0 mm.']);
  });

  it('are told once for strips that are alike', () => {
    const row = [0, 10, 20].flatMap((y) => [at(3, 0, y), at(3, 20, y)]);
    expect(lines('x', [...row, at(4, 0, 40)])).toEqual([
      '3 strips from 0 mm up, each 10 mm on: 2 of No. 3 at 0 mm.',
      '40 mm up: No. 4 at 0 mm.',
    ]);
  });

  it('take no room if there are none', () => {
    expect(
      drawUnnumbered([], { ...strips, cutsRun: 'x' }, 'places', millimetres, area).height,
    ).toBe(0);
  });
});
