import { describe, expect, it } from 'vitest';
import type { Box, BoxLay } from '../pattern/box.js';
import { stripFaces } from './strip-family.js';

const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
const straight = (piece: number, length: number, width: number): BoxLay => ({
  piece,
  turned: false,
  length,
  width,
});
const box = (length: number, width: number, lays: readonly BoxLay[], more: object = {}): Box => ({
  length,
  width,
  firstCuts: ['along', 'across'],
  lays,
  ...more,
});
const lays = [straight(0, 6, 4), straight(1, 5, 2), straight(2, 3, 7)];

describe('stripFaces', () => {
  it('has a face for each way the first cuts may run, and strips as wide as some piece', () => {
    const { faces, families } = stripFaces([box(20, 10, lays)], limits, 'needed');
    expect(faces.map(({ cuts, breadth }) => [cuts, breadth])).toEqual([
      ['along', 10],
      ['across', 20],
    ]);
    const [along, across] = faces.map(({ family }) => families[family]);
    expect(along.length).toBe(20);
    expect(along.lays.map((lay) => [lay.piece, lay.along, lay.across])).toEqual([
      [1, 5, 2],
      [0, 6, 4],
      [2, 3, 7],
    ]);
    expect(along.widths.map(({ extent, leading, fitting }) => [extent, leading, fitting])).toEqual([
      [2, 0, [0]],
      [4, 1, [1]],
      [7, 2, [2]],
    ]);
    expect(across.length).toBe(10);
    expect(across.widths.map(({ extent }) => extent)).toEqual([3, 5, 6]);
    const one = stripFaces([box(20, 10, lays, { firstCuts: ['across'] })], limits, 'needed');
    expect(one.faces.map(({ cuts }) => cuts)).toEqual(['across']);
  });

  it('shares families between boxes as long, and leaves out the second face of what is the same turned', () => {
    const { faces, families } = stripFaces(
      [box(20, 10, lays), box(20, 15, lays)],
      limits,
      'needed',
    );
    expect(families).toHaveLength(3);
    expect(faces[0].family).toBe(faces[2].family);
    const turning = lays.flatMap((lay) => [
      lay,
      { piece: lay.piece, turned: true, length: lay.width, width: lay.length },
    ]);
    expect(stripFaces([box(20, 20, turning)], limits, 'needed').faces).toHaveLength(1);
    expect(stripFaces([box(20, 20, lays)], limits, 'needed').faces).toHaveLength(2);
  });

  it('has one strip, the whole box, where the shear cannot make the first cut', () => {
    const { faces, families } = stripFaces(
      [box(20, 10, lays, { firstCuts: ['along'] })],
      { ...limits, longestCut: 19 },
      'needed',
    );
    expect(faces).toHaveLength(1);
    const [{ widths }] = families;
    expect(widths.map(({ extent, whole }) => [extent, whole])).toEqual([[10, true]]);
  });

  it('has one piece in a strip that cannot be cut to length', () => {
    const long = [...lays, straight(3, 20, 7)];
    const [{ widths }] = stripFaces(
      [box(20, 20, long, { firstCuts: ['along'] })],
      { ...limits, longestCut: 20 },
      'needed',
    ).families;
    expect(widths.every(({ uncut }) => !uncut)).toBe(true);
    const tall = [straight(0, 5, 12), straight(1, 9, 12)];
    const [family] = stripFaces(
      [box(9, 20, tall, { firstCuts: ['along'] })],
      { ...limits, longestCut: 10 },
      'needed',
    ).families;
    expect(family.widths.map(({ uncut, fitting }) => [uncut, fitting])).toEqual([
      [true, [family.lays.findIndex(({ piece }) => piece === 1)]],
    ]);
  });

  it('widens strips where slivers must not be trimmed off, up to what may be held', () => {
    const [{ widths }] = stripFaces(
      [box(20, 20, [straight(0, 6, 8), straight(1, 6, 7)], { firstCuts: ['along'] })],
      { ...limits, kerf: 1, narrowest: 3 },
      'needed',
    ).families;
    // 7 and 8 gross; one kerf wider; or wide enough for a kerf and 3 beside.
    const extents = [...new Set(widths.map(({ extent }) => extent))];
    expect(extents).toEqual([7, 8, 9, 11, 12]);
    const stretching = widths.filter(({ stretches }) => stretches);
    expect(stretching.map(({ extent, leading }) => [extent, leading])).toEqual([
      [11, 1],
      [12, 2],
    ]);
    // At 8, what is 7 wide loses just a kerf.
    const eight = widths.find(({ extent }) => extent === 8);
    expect((eight?.leading ?? 0) + (eight?.fitting.length ?? 0)).toBe(2);
  });

  it('has strips of every width where remnants have a value', () => {
    const [{ widths }] = stripFaces(
      [box(20, 10, lays, { firstCuts: ['along'] })],
      limits,
      'every',
    ).families;
    expect(widths.map(({ extent }) => extent)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  it('leaves out boxes on which nothing can lie', () => {
    expect(stripFaces([box(20, 10, [])], limits, 'needed').faces).toEqual([]);
    expect(stripFaces([box(20, 10, [])], limits, 'every').faces).toEqual([]);
  });
});
