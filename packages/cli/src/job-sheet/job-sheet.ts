import type { Drawing } from '../drawing/drawing.js';
import type { SizedOrder } from '../order/strips.js';
import type { PlanFile } from '../plan-file/plan-file.js';

// The packet as data: what the HTML file and the PDF are both written from, so that
// they say the same. Texts are plain; whoever writes them out escapes them.

/** What the parts of a packet are made from. */
export interface Planned {
  readonly sized: SizedOrder;
  readonly file: PlanFile;
}

/** The whole packet of one plan. */
export interface JobSheet {
  /** The name of the order. */
  readonly title: string;
  /** A few lines below it. */
  readonly summary: readonly string[];
  /** Tells this plan from all others, and is the same for the same plan. */
  readonly key: string;
  /** In the order in which the bench needs them. */
  readonly sections: readonly Section[];
}

export interface Section {
  /** Unique in the packet and fit for an address, such as `layout-3`. */
  readonly id: string;
  readonly title: string;
  /**
   * The stretch of work that it belongs to, such as `Bend`; sections of one follow each other.
   * Given by whoever puts them together.
   */
  readonly work?: string;
  /** Whether a printed one begins on a new page. */
  readonly onNewPage: boolean;
  readonly blocks: readonly Block[];
}

export type Block = Words | Caution | Table | Steps | Picture;

export interface Words {
  readonly kind: 'words';
  readonly text: string;
}

/** Something that keeps hands whole; told apart by more than colour. */
export interface Caution {
  readonly kind: 'caution';
  readonly lines: readonly string[];
}

export interface Table {
  readonly kind: 'table';
  readonly caption?: string;
  readonly columns: readonly {
    readonly heading: string;
    readonly align: 'left' | 'right';
  }[];
  readonly rows: readonly (readonly string[])[];
  /** How many rows at the end are sums. */
  readonly sums?: number;
}

/** Things to do one after the other, each with a box to tick. */
export interface Steps {
  readonly kind: 'steps';
  readonly steps: readonly Step[];
}

export interface Step {
  /** Unique in the packet; the same for the same plan, so that ticks stay. */
  readonly id: string;
  readonly text: string;
  /** What else to know, in smaller letters. */
  readonly detail?: string;
}

export interface Picture {
  readonly kind: 'picture';
  readonly drawing: Drawing;
  /**
   * `true` where a millimetre of the drawing must be a millimetre of paper: its page is
   * then at most TRUE_PAGE and it has a check square and a check bar.
   */
  readonly trueScale: boolean;
  readonly caption?: string;
}

/** What a page at true scale may measure so that it prints on A4 and on US Letter alike, in millimetres. */
export const TRUE_PAGE = { width: 190, height: 255 } as const;
