/**
 * A drawing as plain data: what a layout makes and the SVG sink writes.
 * Millimetres; as in SVG, y runs down the page. In a cut map the stock's lower left corner is
 * (0, 0), so that its point (x, y) lies at (x, -y) here.
 */
export interface Drawing {
  readonly title: string;
  readonly description: string;
  readonly page: Box;
  readonly hatches: readonly Hatch[];
  readonly layers: readonly Layer[];
}

/** A named group of marks; later layers lie on top. */
export interface Layer {
  readonly name: string;
  readonly marks: readonly Mark[];
}

export type Mark = RectMark | LineMark | PolygonMark | TextMark;

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Pen {
  readonly stroke?: string;
  readonly strokeWidth?: number;
  readonly dashes?: readonly number[];
  readonly fill?: string;
}

export interface RectMark extends Pen {
  readonly kind: 'rect';
  readonly box: Box;
  readonly role?: string;
  readonly rounding?: number;
  /** Shown by viewers that have a pointer; never the only place a fact stands. */
  readonly hint?: string;
}

export interface LineMark extends Pen {
  readonly kind: 'line';
  /** Two points or more, joined in order. */
  readonly points: readonly Point[];
  readonly role?: string;
}

export interface PolygonMark extends Pen {
  readonly kind: 'polygon';
  readonly points: readonly Point[];
  readonly role?: string;
}

export interface TextMark {
  readonly kind: 'text';
  readonly role: string;
  readonly text: string;
  /** Where the baseline starts, has its middle or ends. */
  readonly at: Point;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
  readonly bold: boolean;
  /** True if the text reads up the page. */
  readonly upright: boolean;
  readonly colour: string;
  /** The most room the text can take, by the cautious widths of `measure-text.ts`. */
  readonly box: Box;
  /** What the text must stay inside. */
  readonly room: Box;
}

/** Parallel lines that fill an area; the pattern's id is its name. */
export interface Hatch {
  readonly id: string;
  readonly spacing: number;
  readonly strokeWidth: number;
  readonly stroke: string;
  readonly ground: string;
  /** True for two sets of lines, crossed. */
  readonly crossed: boolean;
}
