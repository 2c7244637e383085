/** A rendered page: how dark each pixel is, from 0 for paper to 1 for black ink. */
export interface GreyImage {
  readonly width: number;
  readonly height: number;
  readonly dotsPerMillimetre: number;
  dark(x: number, y: number): number;
}

/** A stretch of pixels, both ends in it. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

const INKED = 0.5;

/** Stretches of ink along a line of pixels, at least so many millimetres long. */
function runs(length: number, least: number, inked: (at: number) => boolean): readonly Run[] {
  const found: Run[] = [];
  let from: number | undefined;
  for (let at = 0; at <= length; at++) {
    const ink = at < length && inked(at);
    if (ink && from === undefined) from = at;
    if (!ink && from !== undefined) {
      if (at - from >= least) found.push({ from, to: at - 1 });
      from = undefined;
    }
  }
  return found;
}

/** A level line of ink. All in millimetres from the upper left corner. */
export interface LevelLine {
  readonly y: number;
  readonly from: number;
  readonly to: number;
}

/** Level lines that are at least so long, from above, each at the middle of its ink. */
export function levelLines(image: GreyImage, least: number): readonly LevelLine[] {
  const { width, height, dotsPerMillimetre: dots } = image;
  const rows: { y: number; from: number; to: number }[] = [];
  for (let y = 0; y < height; y++) {
    for (const { from, to } of runs(width, least * dots, (x) => image.dark(x, y) > INKED)) {
      const known = rows.at(-1);
      if (known !== undefined && known.y >= y - 1 && Math.abs(known.from - from) < dots) {
        rows[rows.length - 1] = { y, from: Math.min(from, known.from), to: Math.max(to, known.to) };
      } else {
        rows.push({ y, from, to });
      }
    }
  }
  return rows.map(({ y, from, to }) => {
    const x = Math.round((from + to) / 2);
    return { y: centroid(image, 'y', y, x), from: from / dots, to: (to + 1) / dots };
  });
}

/** Upright lines that cross a level, from the left: the middle of the ink of each, in millimetres. */
export function crossings(image: GreyImage, level: number, from: number, to: number) {
  const { dotsPerMillimetre: dots } = image;
  const y = Math.round(level * dots);
  const [first, last] = [Math.max(0, Math.round(from * dots)), Math.round(to * dots)];
  return runs(Math.min(last, image.width), 1, (x) => x >= first && image.dark(x, y) > INKED).map(
    (run) => centroid(image, 'x', run.from, y),
  );
}

/**
 * The middle of a line of ink near a pixel, weighed by how dark its pixels are, in millimetres.
 * That is finer than a pixel, since what covers a pixel in part darkens it in part.
 */
function centroid(image: GreyImage, way: 'x' | 'y', near: number, across: number): number {
  const reach = Math.ceil(image.dotsPerMillimetre * 0.4);
  let [sum, weight] = [0, 0];
  for (let at = Math.max(0, near - reach); at <= near + reach; at++) {
    const dark = way === 'x' ? image.dark(at, across) : image.dark(across, at);
    sum += dark * (at + 0.5);
    weight += dark;
  }
  return sum / weight / image.dotsPerMillimetre;
}
