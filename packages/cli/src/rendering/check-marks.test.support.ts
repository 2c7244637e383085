import { crossings, type GreyImage, type LevelLine, levelLines } from './image.test.support.js';

/** The check square and the check bar as a page shows them. Millimetres of paper. */
export interface CheckMarksFound {
  readonly wide: number;
  readonly high: number;
  readonly bar: number;
}

/**
 * Finds, on a page without other level lines of 45 to 60 mm, the square's top and foot and the
 * bar below it, and measures between the middles of their lines.
 */
export function findCheckMarks(image: GreyImage): CheckMarksFound {
  const lines = levelLines(image, 45).filter(({ from, to }) => to - from < 60);
  const [top, foot, bar] = lines;
  if (top === undefined || foot === undefined || bar === undefined || lines.length !== 3) {
    throw new Error(`expected a square and a bar, found lines ${JSON.stringify(lines)}`);
  }
  const span = (line: LevelLine, level: number): number => {
    const found = crossings(image, level, line.from - 1, line.to + 1);
    return (found.at(-1) ?? Number.NaN) - (found[0] ?? Number.NaN);
  };
  return {
    // Below the words and between the ticks of the square; where only the long ticks of the bar reach.
    wide: span(top, foot.y - 5),
    high: foot.y - top.y,
    bar: span(bar, bar.y - 2),
  };
}
