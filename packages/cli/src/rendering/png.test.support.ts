import { PNG } from 'pngjs';
import type { GreyImage } from './image.test.support.js';

export function readPng(bytes: Buffer, dotsPerMillimetre: number): GreyImage {
  const { width, height, data } = PNG.sync.read(bytes);
  const channel = (x: number, y: number, which: number) => data[4 * (y * width + x) + which] ?? 255;
  return {
    width,
    height,
    dotsPerMillimetre,
    // Luma of ITU-R BT.601.
    dark: (x, y) =>
      1 - (0.299 * channel(x, y, 0) + 0.587 * channel(x, y, 1) + 0.114 * channel(x, y, 2)) / 255,
  };
}
