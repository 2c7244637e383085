import type { GreyImage } from './image.test.support.js';

/** What a page shows of a strip with straight edges, from above; millimetres down the page. */
export interface StripPiece {
  /** Lines across the strip: its ends, and bends in. */
  readonly ends: readonly number[];
  /** Lines across the strip that run on to its left. */
  readonly joins: readonly number[];
}

const INKED = 0.4;
/** No tint is as dark as this, every line is. */
const TINT = 0.15;

/**
 * Finds the cutting edge, the first upright line from the left that is long, and then the level
 * lines that start at it, and those that lie left of it.
 */
export function findStripPiece(image: GreyImage): StripPiece {
  const { dotsPerMillimetre: dots } = image;
  const edge = cuttingEdge(image);
  return {
    // In the middle, clear of what is cut off the corners of a tab.
    ends: levels(image, edge + 11 * dots, edge + 14 * dots),
    joins: levels(image, edge - 4 * dots, edge - 1.5 * dots),
  };
}

function cuttingEdge(image: GreyImage): number {
  for (let x = 0; x < image.width; x++) {
    let inked = 0;
    for (let y = 0; y < image.height; y++) if (image.dark(x, y) > INKED) inked++;
    if (inked > 60 * image.dotsPerMillimetre) return x;
  }
  throw new Error('no strip found');
}

/** Lines that are inked all the way between two columns of pixels: the middle of their ink. */
function levels(image: GreyImage, from: number, to: number): readonly number[] {
  const found: number[] = [];
  let [sum, weight, heaviest] = [0, 0, 0];
  const [first, last] = [Math.round(from), Math.round(to)];
  for (let y = 0; y <= image.height; y++) {
    // The palest pixel of the row tells how far the line covers it all along.
    let dark = y < image.height ? 1 : 0;
    for (let x = first; x <= last && dark > 0; x++) dark = Math.min(dark, image.dark(x, y));
    dark = Math.max(0, dark - TINT);
    if (dark > 0) {
      sum += dark * (y + 0.5);
      weight += dark;
      heaviest = Math.max(heaviest, dark);
    } else if (weight > 0) {
      if (heaviest > INKED) found.push(sum / weight / image.dotsPerMillimetre);
      [sum, weight, heaviest] = [0, 0, 0];
    }
  }
  return found;
}
