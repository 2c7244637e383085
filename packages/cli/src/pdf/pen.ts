import type { Font } from 'fontkit';
import type PDFDocument from 'pdfkit';
import type { Point } from '../drawing/drawing.js';
import { oneLine } from '../drawing/measure-text.js';
import { type Directed, directionsOf, MAY_TURN } from './directions.js';
import type { Fonts } from './fonts.js';

export type PdfDocument = InstanceType<typeof PDFDocument>;

/** How a line of text looks. */
export interface TextLook {
  /** Font size, millimetres. */
  readonly size: number;
  readonly bold?: boolean;
  readonly colour: string;
}

/** Stands for a letter that the font has not. */
const UNKNOWN = '\uFFFD';
/** Marks that only change the letter before them; left out where the font has them not. */
const INVISIBLE = /^[\p{Mn}\p{Me}\p{Cf}]$/u;

/** Writes and measures lines of text. All lengths in millimetres. */
export class TextPen {
  readonly #document: PdfDocument;
  readonly #fonts: Fonts;
  readonly #lines = new Map<string, Line>();
  readonly #boldLines = new Map<string, Line>();

  constructor(document: PdfDocument, fonts: Fonts) {
    this.#document = document;
    this.#fonts = fonts;
    document.registerFont('regular', fonts.regular as never);
    document.registerFont('bold', fonts.bold as never);
  }

  /** How wide a line comes out. */
  width(text: string, size: number, bold = false): number {
    return this.#line(text, bold).width * size;
  }

  /** Writes a line with its baseline beginning at a point. */
  write(text: string, { x, y }: Point, { size, bold = false, colour }: TextLook): void {
    const { runs } = this.#line(text, bold);
    this.#document
      .font(bold ? 'bold' : 'regular')
      .fontSize(size)
      .fillColor(colour);
    let left = x;
    for (const run of runs) {
      const options = { ...run.options, lineBreak: false, baseline: 'alphabetic' } as const;
      this.#document.text(run.text, left, y, options);
      left += run.width * size;
    }
  }

  /** A line as it is set; the same words are set on many pages. */
  #line(text: string, bold: boolean): Line {
    const lines = bold ? this.#boldLines : this.#lines;
    const known = lines.get(text);
    if (known !== undefined) return known;
    this.#document.font(bold ? 'bold' : 'regular').fontSize(1);
    const letters = shown(text, bold ? this.#fonts.bold : this.#fonts.regular);
    const runs = directionsOf(letters)
      .flatMap(asSet)
      .map((run): SetRun => {
        return { ...run, width: this.#document.widthOfString(run.text, run.options) };
      });
    const line = { runs, width: runs.reduce((sum, run) => sum + run.width, 0) };
    lines.set(text, line);
    return line;
  }
}

/** Widths are those at font size 1. */
interface SetRun {
  readonly text: string;
  readonly options: PDFKit.Mixins.TextOptions;
  readonly width: number;
}

interface Line {
  readonly runs: readonly SetRun[];
  readonly width: number;
}

/**
 * A stretch as the font is to set it. The font's own code turns a run round by its script, not
 * by what the line tells: so numbers of Arabic are set one by one, and signs without a script
 * are turned round here.
 */
function asSet({ text, rightToLeft }: Directed): readonly Omit<SetRun, 'width'>[] {
  const turns = MAY_TURN.test(text);
  if (!rightToLeft) {
    return turns ? [...text].map((each) => ({ text: each, options: {} })) : [{ text, options: {} }];
  }
  return turns
    ? [{ text, options: AS_A_WHOLE }]
    : [{ text: [...text].reverse().join(''), options: {} }];
}

/** With features named, even none, a run is set as a whole, not word by word: what reads from the right needs it. */
const AS_A_WHOLE = { features: [] };

/** The text as one line of letters that the font has. */
export function shown(text: string, font: Pick<Font, 'hasGlyphForCodePoint'>): string {
  let known = '';
  for (const letter of oneLine(text)) {
    if (font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0)) known += letter;
    else if (!INVISIBLE.test(letter)) known += UNKNOWN;
  }
  return known;
}
