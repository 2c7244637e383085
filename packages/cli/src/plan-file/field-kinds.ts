import { z } from 'zod';
import { LONGEST_MILLIMETRES } from '../length/parse-length.js';

// What fields of plan.json hold, each told with what it means.

export const text = (meaning: string) => z.string().min(1).describe(`${meaning}.`);
export const distance = (meaning: string) =>
  z.number().min(0).max(LONGEST_MILLIMETRES).describe(`${meaning}, in millimetres.`);
export const extent = (meaning: string) =>
  z.number().positive().max(LONGEST_MILLIMETRES).describe(`${meaning}, in millimetres.`);
export const money = (meaning: string) =>
  z.number().min(0).max(1e12).describe(`${meaning}, in the order's currency, to two decimals.`);
export const count = (meaning: string, least: number) =>
  z.int().min(least).max(10_000_000).describe(`${meaning}, a whole number.`);
export const degrees = (meaning: string) => z.number().min(0).describe(`${meaning}, in degrees.`);
export const direction = z
  .enum(['in', 'out'])
  .describe('Which way: in is toward the inside of the cutter, out is away from it.');
