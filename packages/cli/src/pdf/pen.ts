import type { Font } from 'fontkit';
import type PDFDocument from 'pdfkit';
import type { Point } from '../drawing/drawing.js';
import { oneLine } from '../drawing/measure-text.js';
import { directionsOf } from './directions.js';
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

  constructor(document: PdfDocument, fonts: Fonts) {
    this.#document = document;
    this.#fonts = fonts;
    document.registerFont('regular', fonts.regular as never);
    document.registerFont('bold', fonts.bold as never);
  }

  /** How wide a line comes out. */
  width(text: string, size: number, bold = false): number {
    this.#choose(size, bold);
    return this.#runs(text, bold)
      .map((run) => this.#document.widthOfString(run, OPTIONS))
      .reduce((sum, width) => sum + width, 0);
  }

  /** Writes a line with its baseline beginning at a point. */
  write(text: string, { x, y }: Point, { size, bold = false, colour }: TextLook): void {
    this.#choose(size, bold);
    this.#document.fillColor(colour);
    let left = x;
    for (const run of this.#runs(text, bold)) {
      this.#document.text(run, left, y, { ...OPTIONS, lineBreak: false, baseline: 'alphabetic' });
      left += this.#document.widthOfString(run, OPTIONS);
    }
  }

  #choose(size: number, bold: boolean): void {
    this.#document.font(bold ? 'bold' : 'regular').fontSize(size);
  }

  #runs(text: string, bold: boolean): readonly string[] {
    const known = shown(text, bold ? this.#fonts.bold : this.#fonts.regular);
    return directionsOf(known).map((run) => run.text);
  }
}

/** With features named, even none, a run is set as a whole, which right-to-left runs need. */
const OPTIONS = { features: [] };

/** The text as one line of letters that the font has. */
export function shown(text: string, font: Pick<Font, 'hasGlyphForCodePoint'>): string {
  let known = '';
  for (const letter of oneLine(text)) {
    if (font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0)) known += letter;
    else if (!INVISIBLE.test(letter)) known += UNKNOWN;
  }
  return known;
}
