import { type LetterOutline, levelEnd, levelEndAt, STROKE, straight } from './stroke.js';

/** Top and bottom of a bar across the middle. */
const [BAR_FOOT, BAR_TOP] = [(1 - STROKE) / 2, (1 + STROKE) / 2];
/** Where the bar along the top begins. */
const HEAD = 1 - STROKE;
/** Width of the flat that ends two slanting strokes where they meet. */
const BLUNT = 0.12;

/** Width of the flat on top of the A. */
const APEX = 0.16;

/** The outer outline alone. */
export function letterA(): LetterOutline {
  const [width, barFoot] = [0.9, 0.17];
  const [top, run] = [APEX, (width - APEX) / 2];
  const foot = levelEndAt(run, 1);
  const [left, right] = [foot + run * barFoot, width - foot - run * barFoot];
  return straight([
    [0, 0],
    [foot, 0],
    [left, barFoot],
    [right, barFoot],
    [width - foot, 0],
    [width, 0],
    [(width + top) / 2, 1],
    [(width - top) / 2, 1],
  ]);
}

export function letterE(): LetterOutline {
  const [width, bar] = [0.62, 0.56];
  return straight([
    [0, 0],
    [width, 0],
    [width, STROKE],
    [STROKE, STROKE],
    [STROKE, BAR_FOOT],
    [bar, BAR_FOOT],
    [bar, BAR_TOP],
    [STROKE, BAR_TOP],
    [STROKE, HEAD],
    [width, HEAD],
    [width, 1],
    [0, 1],
  ]);
}

export function letterF(): LetterOutline {
  const [width, bar, lower] = [0.62, 0.54, 0.05];
  return straight([
    [0, 0],
    [STROKE, 0],
    [STROKE, BAR_FOOT - lower],
    [bar, BAR_FOOT - lower],
    [bar, BAR_TOP - lower],
    [STROKE, BAR_TOP - lower],
    [STROKE, HEAD],
    [width, HEAD],
    [width, 1],
    [0, 1],
  ]);
}

export function letterH(): LetterOutline {
  const width = 0.76;
  return straight([
    [0, 0],
    [STROKE, 0],
    [STROKE, BAR_FOOT],
    [width - STROKE, BAR_FOOT],
    [width - STROKE, 0],
    [width, 0],
    [width, 1],
    [width - STROKE, 1],
    [width - STROKE, BAR_TOP],
    [STROKE, BAR_TOP],
    [STROKE, 1],
    [0, 1],
  ]);
}

/** With bars at foot and top, without which it is a rectangle. */
export function letterI(): LetterOutline {
  const width = 0.54;
  const [left, right] = [(width - STROKE) / 2, (width + STROKE) / 2];
  return straight([
    [0, 0],
    [width, 0],
    [width, STROKE],
    [right, STROKE],
    [right, HEAD],
    [width, HEAD],
    [width, 1],
    [0, 1],
    [0, HEAD],
    [left, HEAD],
    [left, STROKE],
    [0, STROKE],
  ]);
}

export function letterK(): LetterOutline {
  const [width, crotch] = [0.8, 0.4];
  const steep = 0.5 / (width - crotch);
  const end = levelEndAt(width - crotch, 0.5);
  const armpit = 1 - steep * (width - end - STROKE);
  return straight([
    [0, 0],
    [STROKE, 0],
    [STROKE, 1 - armpit],
    [width - end, 0],
    [width, 0],
    [crotch, 0.5],
    [width, 1],
    [width - end, 1],
    [STROKE, armpit],
    [STROKE, 1],
    [0, 1],
  ]);
}

export function letterL(): LetterOutline {
  const width = 0.6;
  return straight([
    [0, 0],
    [width, 0],
    [width, STROKE],
    [STROKE, STROKE],
    [STROKE, 1],
    [0, 1],
  ]);
}

export function letterM(): LetterOutline {
  const [width, valley] = [1.04, 0.48];
  const run = width / 2 - STROKE;
  // A slanting stroke cut upright, as the one between level cuts turned on its side.
  const upright = levelEndAt(1 - valley, run);
  return straight([
    [0, 0],
    [STROKE, 0],
    [STROKE, 1 - upright],
    [width / 2, valley - upright],
    [width - STROKE, 1 - upright],
    [width - STROKE, 0],
    [width, 0],
    [width, 1],
    [width - STROKE, 1],
    [width / 2, valley],
    [STROKE, 1],
    [0, 1],
  ]);
}

export function letterN(): LetterOutline {
  const width = 0.82;
  // A slanting stroke cut upright, as the one between level cuts turned on its side.
  const upright = levelEnd(1, width - 2 * STROKE);
  return straight([
    [0, 0],
    [STROKE, 0],
    [STROKE, 1 - upright],
    [width - STROKE, 0],
    [width, 0],
    [width, 1],
    [width - STROKE, 1],
    [width - STROKE, upright],
    [STROKE, 1],
    [0, 1],
  ]);
}

export function letterT(): LetterOutline {
  const width = 0.74;
  const [left, right] = [(width - STROKE) / 2, (width + STROKE) / 2];
  return straight([
    [left, 0],
    [right, 0],
    [right, HEAD],
    [width, HEAD],
    [width, 1],
    [0, 1],
    [0, HEAD],
    [left, HEAD],
  ]);
}

export function letterV(): LetterOutline {
  const width = 0.9;
  const run = (width - BLUNT) / 2;
  const end = levelEndAt(run, 1);
  return straight([
    [run, 0],
    [run + BLUNT, 0],
    [width, 1],
    [width - end, 1],
    [width / 2, 1 - (width / 2 - end) / run],
    [end, 1],
    [0, 1],
  ]);
}

/** Two of the letter V, so far apart that their tops share the middle. */
export function letterW(): LetterOutline {
  const run = 0.34;
  const end = levelEndAt(run, 1);
  const valley = run + BLUNT / 2;
  const depth = (valley - end) / run;
  const middle = valley + run * depth + BLUNT / 2;
  const [width, crotch] = [2 * middle, (middle - run - BLUNT) / run];
  return straight([
    [run, 0],
    [run + BLUNT, 0],
    [middle, crotch],
    [width - run - BLUNT, 0],
    [width - run, 0],
    [width, 1],
    [width - end, 1],
    [width - valley, 1 - depth],
    [middle + BLUNT / 2, 1],
    [middle - BLUNT / 2, 1],
    [valley, 1 - depth],
    [end, 1],
    [0, 1],
  ]);
}

export function letterX(): LetterOutline {
  const width = 0.86;
  const end = levelEnd(width, 1);
  const side = (width - end) / 2;
  const crotch = (width / 2 - end) / (width - end);
  return straight([
    [0, 0],
    [end, 0],
    [width / 2, crotch],
    [width - end, 0],
    [width, 0],
    [width - side, 0.5],
    [width, 1],
    [width - end, 1],
    [width / 2, 1 - crotch],
    [end, 1],
    [0, 1],
    [side, 0.5],
  ]);
}

export function letterY(): LetterOutline {
  const [width, fork] = [0.84, 0.42];
  const [left, right] = [(width - STROKE) / 2, (width + STROKE) / 2];
  const end = levelEndAt(left, 1 - fork);
  const depth = ((width / 2 - end) * (1 - fork)) / left;
  return straight([
    [left, 0],
    [right, 0],
    [right, fork],
    [width, 1],
    [width - end, 1],
    [width / 2, 1 - depth],
    [end, 1],
    [0, 1],
    [left, fork],
  ]);
}

export function letterZ(): LetterOutline {
  const width = 0.74;
  const end = levelEnd(width, 1 - 2 * STROKE);
  return straight(
    [
      [0, 0],
      [width, 0],
      [width, STROKE],
      [end, STROKE],
      [width, HEAD],
      [width, 1],
      [0, 1],
      [0, HEAD],
      [width - end, HEAD],
      [0, STROKE],
    ],
    'upright',
  );
}
