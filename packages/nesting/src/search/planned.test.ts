import { describe, expect, it } from 'vitest';
import type { Pattern } from '../pattern/part.js';
import { available, without } from './class-supplies.js';
import { demandLeft, keptCoins, sheetsUsed } from './planned.js';

const pattern = (stockClass: number, kept: number, ...counts: [number, number][]): Pattern => ({
  stockClass,
  part: { kind: 'split', cuts: 'along', parts: [] },
  counts,
  kept,
});
const planned = [
  { pattern: pattern(0, 7, [0, 3], [2, 1]), count: 4 },
  { pattern: pattern(2, 5, [0, 1]), count: 2 },
  { pattern: pattern(0, 0, [2, 6]), count: 1 },
];

describe('sheets that are planned', () => {
  it('are counted by class, with their coins, and what they leave to be cut', () => {
    expect(sheetsUsed(planned, 4)).toEqual([5, 0, 2, 0]);
    expect(keptCoins(planned)).toBe(38);
    // 14 of the first, 10 of the third.
    expect(demandLeft([20, 3, 10], planned)).toEqual([6, 3, 0]);
    expect(demandLeft([5, 0, 12], planned)).toEqual([0, 0, 2]);
  });
});

describe('supplies of a class', () => {
  const supply = {
    stock: 's',
    least: 0,
    unit: 1,
    price: 5,
    bought: false,
    leftOver: 0,
    charge: 1000,
  };
  const entry = {
    box: { length: 9, width: 9, firstCuts: ['along'] as const, lays: [] },
    supplies: [
      { ...supply, count: 2 },
      { ...supply, count: 5, least: 3 },
      { ...supply, count: Number.POSITIVE_INFINITY },
    ],
  };

  it('are taken in their order, those that must be paid for too', () => {
    expect(available(entry)).toBe(Number.POSITIVE_INFINITY);
    expect(available({ ...entry, supplies: entry.supplies.slice(0, 2) })).toBe(7);
    const left = (count: number) =>
      without(entry, count).supplies.map(({ count, least }) => [count, least]);
    expect(left(1)).toEqual([
      [1, 0],
      [5, 3],
      [Number.POSITIVE_INFINITY, 0],
    ]);
    expect(left(4)).toEqual([
      [0, 0],
      [3, 1],
      [Number.POSITIVE_INFINITY, 0],
    ]);
    expect(left(50)).toEqual([
      [0, 0],
      [0, 0],
      [Number.POSITIVE_INFINITY, 0],
    ]);
  });
});
