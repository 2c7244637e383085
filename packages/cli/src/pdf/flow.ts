import { INK } from '../drawing/ink.js';
import { oneLine } from '../drawing/measure-text.js';
import type { Paper } from './paper.js';
import type { PdfDocument, TextPen } from './pen.js';
import { wrapText } from './wrap-text.js';

/** Points of a PDF for a millimetre. */
export const POINTS = 72 / 25.4;

/** From the baseline up, and from line to line, in multiples of the font size. */
const RISE = 0.93;
const LEADING = 1.28;

export interface LineLook {
  readonly size: number;
  readonly bold?: boolean;
  readonly colour?: string;
}

/**
 * A place on the pages that goes down as things are written. Millimetres, y down; a new page
 * begins where something does not fit any more.
 */
export class Flow {
  readonly document: PdfDocument;
  readonly pen: TextPen;
  readonly paper: Paper;
  top = 0;

  constructor(document: PdfDocument, pen: TextPen, paper: Paper) {
    this.document = document;
    this.pen = pen;
    this.paper = paper;
    this.newPage();
  }

  get left(): number {
    return this.paper.side;
  }

  get width(): number {
    return this.paper.width - 2 * this.paper.side;
  }

  /** How much of the page is left. */
  get room(): number {
    return this.paper.height - this.paper.foot - this.top;
  }

  /** The height of what a page holds. */
  get pageRoom(): number {
    return this.paper.height - this.paper.foot - this.paper.top;
  }

  get atTop(): boolean {
    return this.top === this.paper.top;
  }

  newPage(): void {
    const { width, height, top } = this.paper;
    this.document.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
    this.document.scale(POINTS);
    this.top = top;
  }

  /** Whether so much fits on what is left of this page. */
  fits(height: number): boolean {
    // What rounding leaves is not worth a page.
    return height <= this.room + 1e-6;
  }

  /** Begins a new page where so much does not fit on this one. */
  need(height: number): void {
    if (!this.fits(height) && !this.atTop) this.newPage();
  }

  /** Leaves room, but not at the head of a page. */
  gap(height: number): void {
    if (!this.atTop) this.top += Math.min(height, Math.max(0, this.room));
  }

  lines(text: string, width: number, { size, bold = false }: LineLook): readonly string[] {
    return wrapText(oneLine(text), width, (line) => this.pen.width(line, size, bold));
  }

  /** Writes a line of text with its top left corner at a place. */
  put(text: string, left: number, top: number, look: LineLook): void {
    const { size, bold = false, colour = INK.text } = look;
    this.pen.write(text, { x: left, y: top + RISE * size }, { size, bold, colour });
  }

  /** Writes a paragraph, over pages where it must. */
  paragraph(text: string, look: LineLook, indent = 0): void {
    for (const line of this.lines(text, this.width - indent, look)) {
      this.need(lineHeight(look));
      this.put(line, this.left + indent, this.top, look);
      this.top += lineHeight(look);
    }
  }
}

export const lineHeight = ({ size }: Pick<LineLook, 'size'>): number => LEADING * size;
