import type { Box, Mark, RectMark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT, shorten, textWidth } from '../drawing/measure-text.js';
import { LABEL_SIZES, TYPE, type Unit } from './paper.js';
import { type ReadingFrame, readingFrame } from './reading-frame.js';

export interface LabelWords {
  readonly number: string;
  readonly name: string;
  readonly size: string;
}

export interface PieceLabel {
  readonly marks: readonly Mark[];
  /** Its size and number, the number alone, or nothing: the foot must then say where it lies. */
  readonly says: 'size' | 'number' | 'nothing';
}

/** Clear edges inside a piece, in millimetres of paper. */
const SIDE = 1;
const HEAD = 0.25;
/** Around a bare number, which is the last resort. */
const BARE = 0.15;
/** In multiples of the font size. */
const GAP = 0.45;
const WIDE_GAP = 1.2;
const PILL = 0.35;
/** A piece of so many lines' height takes two in a block rather than one spread out. */
const ROOMY = 3.5;
/** A name cut shorter than this many letters helps nobody. */
const LEAST_NAME = 6;

interface Choice {
  readonly size: number;
  readonly lines: 1 | 2;
  readonly name: string;
}

/**
 * A piece's number, name and size in the largest type that fits, on one line or two, along its
 * longer side. Short of room it drops the end of the name, then the name, then the size.
 */
export function pieceLabel(box: Box, words: LabelWords, unit: Unit): PieceLabel {
  const frame = readingFrame(box);
  const choice = choose(frame, words, unit);
  if (choice !== undefined) {
    return { marks: withSize(frame, words, choice, unit), says: 'size' };
  }
  // A lone 6 or 9 is best read the right way up.
  const lying = numberOnly(readingFrame(box, false), words.number, unit);
  const marks = lying.length > 0 ? lying : numberOnly(frame, words.number, unit);
  return { marks, says: marks.length > 0 ? 'number' : 'nothing' };
}

function choose(frame: ReadingFrame, words: LabelWords, unit: Unit): Choice | undefined {
  const both = (name: string, sizes: readonly number[]): readonly Choice[] =>
    sizes.flatMap((each) => {
      const size = each * unit;
      const roomy = frame.short > ROOMY * LINE_HEIGHT * size;
      const lines = roomy ? ([2, 1] as const) : ([1, 2] as const);
      return lines.map((count) => ({ size, lines: count, name }));
    });
  const cut = both('', [TYPE.least]).flatMap((choice) => {
    const name = shorten(words.name, nameRoom(frame, words, choice, unit));
    return [...name].length > LEAST_NAME ? [{ ...choice, name }] : [];
  });
  const choices = [...both(words.name, LABEL_SIZES), ...cut, ...both('', LABEL_SIZES)];
  return choices.find((choice) => fits(frame, words, choice, unit));
}

const pillWidth = (number: string): number => textWidth(number, true) + 2 * PILL;

/** Room for the name, in multiples of the font size. */
function nameRoom(
  frame: ReadingFrame,
  { number, size }: LabelWords,
  { lines, size: font }: Choice,
  unit: Unit,
): number {
  const line = (frame.long - 2 * SIDE * unit) / font;
  const besideIt = lines === 1 ? WIDE_GAP + textWidth(size) : 0;
  return line - pillWidth(number) - GAP - besideIt;
}

function fits(frame: ReadingFrame, words: LabelWords, choice: Choice, unit: Unit): boolean {
  const high = choice.lines * LINE_HEIGHT * choice.size + 2 * HEAD * unit;
  const line = frame.long - 2 * SIDE * unit;
  return (
    high <= frame.short &&
    textWidth(choice.name) <= nameRoom(frame, words, choice, unit) &&
    textWidth(words.size) * choice.size <= line
  );
}

function withSize(
  frame: ReadingFrame,
  words: LabelWords,
  { size, lines, name }: Choice,
  unit: Unit,
): readonly Mark[] {
  const line = LINE_HEIGHT * size;
  const first = (frame.short - (lines - 1) * line) / 2;
  const left = SIDE * unit;
  const pill = pillWidth(words.number) * size;
  const named =
    name === ''
      ? []
      : [frame.text({ role: 'name', text: name, s: left + pill + GAP * size, t: first, size })];
  const sized =
    lines === 1
      ? frame.text({
          role: 'size',
          text: words.size,
          s: frame.long - left,
          t: first,
          size,
          anchor: 'end',
        })
      : frame.text({ role: 'size', text: words.size, s: left, t: first + line, size });
  return [...pilled(frame, words.number, left, first, size), ...named, sized];
}

function numberOnly(frame: ReadingFrame, number: string, unit: Unit): readonly Mark[] {
  const clear = 2 * BARE * unit;
  for (const size of LABEL_SIZES.map((each) => each * unit)) {
    if (LINE_HEIGHT * size + clear > frame.short) continue;
    const middle = frame.short / 2;
    const pill = pillWidth(number) * size;
    if (pill + clear <= frame.long) {
      return pilled(frame, number, (frame.long - pill) / 2, middle, size);
    }
    if (textWidth(number, true) * size + clear <= frame.long) {
      return [numberText(frame, number, frame.long / 2, middle, size)];
    }
  }
  return [];
}

/** The number in a rounded frame, so that it is not read as a length. */
function pilled(
  frame: ReadingFrame,
  number: string,
  s: number,
  t: number,
  size: number,
): readonly Mark[] {
  const wide = pillWidth(number) * size;
  const high = 1.22 * size;
  const pill: RectMark = {
    kind: 'rect',
    role: 'pill',
    box: frame.box(s, t - high / 2, wide, high),
    rounding: high / 2.6,
    fill: INK.paper,
    stroke: INK.text,
    strokeWidth: 0.09 * size,
  };
  return [pill, numberText(frame, number, s + wide / 2, t, size)];
}

const numberText = (frame: ReadingFrame, number: string, s: number, t: number, size: number) =>
  frame.text({ role: 'number', text: number, s, t, size, anchor: 'middle', bold: true });
