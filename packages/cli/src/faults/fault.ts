/** What is wrong with a value, as data. Its wording is in fault-text.ts. */
export type Complaint =
  | { readonly code: 'not a length' }
  | { readonly code: 'not a size' }
  | { readonly code: 'zero denominator' }
  | { readonly code: 'unknown unit'; readonly unit: string }
  | { readonly code: 'must be above zero' }
  | { readonly code: 'must not be negative' }
  | { readonly code: 'too large'; readonly limit: string }
  | { readonly code: 'too small'; readonly limit: string }
  | { readonly code: 'not a whole number'; readonly least: number }
  | { readonly code: 'not a number' }
  | { readonly code: 'not a price' }
  | { readonly code: 'not a priced sheet' }
  | { readonly code: 'not yes or no' }
  | { readonly code: 'not a stock limit' }
  | { readonly code: 'not layouts' }
  | { readonly code: 'not corners' }
  | { readonly code: 'not text' }
  | { readonly code: 'not a list' }
  | { readonly code: 'not a section' }
  | { readonly code: 'empty list' }
  | { readonly code: 'text too long'; readonly limit: number }
  | { readonly code: 'control characters' }
  | {
      readonly code: 'not a choice';
      readonly choices: readonly string[];
      readonly nearest?: string | undefined;
    }
  | {
      readonly code: 'unknown field';
      readonly known: readonly string[];
      readonly nearest?: string | undefined;
    }
  | {
      readonly code: 'unknown size';
      readonly outline: string;
      readonly known: readonly string[];
    }
  | { readonly code: 'missing'; readonly hint?: string }
  | { readonly code: 'duplicate name'; readonly first: FieldPath }
  | { readonly code: 'outline'; readonly reason: string }
  | { readonly code: 'strip'; readonly reason: string }
  | { readonly code: 'bend rule'; readonly reason: string }
  | { readonly code: 'not a thickness' }
  | { readonly code: 'metal'; readonly reason: string }
  | {
      readonly code: 'measure of another metal';
      readonly measure: string;
      /** The metals that are sold so. */
      readonly sold: readonly string[];
      readonly metal: string;
    }
  | {
      readonly code: 'length of another kind';
      readonly kind: string;
      /** The lengths of this kind; none of a raw edge. */
      readonly known: readonly string[];
    }
  | { readonly code: 'not a seam place' }
  | { readonly code: 'drawing'; readonly reason: string }
  | { readonly code: 'two outlines' }
  | { readonly code: 'not a drawing' }
  | { readonly code: 'unreadable'; readonly reason: string }
  | { readonly code: 'unreadable table'; readonly reason: string }
  | { readonly code: 'not YAML'; readonly reason: string }
  | { readonly code: 'not JSON'; readonly reason: string }
  | { readonly code: 'not CSV'; readonly reason: string }
  | {
      readonly code: 'unknown column';
      readonly known: readonly string[];
      readonly nearest?: string | undefined;
    }
  | { readonly code: 'column twice' }
  | { readonly code: 'cells without a column' }
  | { readonly code: 'two formats'; readonly other: string }
  | { readonly code: 'nothing to correct'; readonly known: readonly string[] }
  | {
      readonly code: 'no main size';
      readonly outline: string;
      readonly known: readonly string[];
    }
  | { readonly code: 'size twice'; readonly other: string }
  | { readonly code: 'empty file' }
  | { readonly code: 'empty table'; readonly known: readonly string[] }
  | {
      readonly code: 'not a mark';
      /** A sign that no mark has; signs that do not agree; or a mark of nothing on the rack. */
      readonly wrong: 'sign' | 'check' | 'absent';
      readonly nearest: readonly string[];
    }
  | { readonly code: 'mark twice'; readonly row: number }
  | { readonly code: 'not marks'; readonly mark: number }
  | { readonly code: 'disagrees'; readonly expected: string }
  | { readonly code: 'schema'; readonly reason: string };

/** A path into a document: field names and list positions. */
export type FieldPath = readonly (string | number)[];

/** One thing that is wrong with a field, by the name that an order has for it. */
export interface FieldFault {
  readonly name: string;
  readonly complaint: Complaint;
}

/** One thing that is wrong with a document, and where. */
export interface Fault {
  readonly complaint: Complaint;
  /** Empty for the document as a whole. */
  readonly path: FieldPath;
  /** From 1; absent where the document has no lines to speak of. */
  readonly line?: number;
  /** Where it is in a table, the document or one that it names; its path is then the column's heading. */
  readonly cell?: Cell;
  /** What the document says there, as written; absent where it says nothing. */
  readonly found?: string;
}

/** A place in a table, as a spreadsheet names it. */
export interface Cell {
  /** The table's file, as the user would name it. */
  readonly file: string;
  /** Absent where it is the table as a whole. */
  readonly row?: number;
  /** Its letters; absent where it is the row as a whole. */
  readonly column?: string | undefined;
}

/** A document that cannot be used. It carries every fault that was found. */
export class DocumentError extends Error {
  readonly file: string;
  readonly faults: readonly Fault[];

  constructor(file: string, faults: readonly Fault[], message: string) {
    super(message);
    this.name = 'DocumentError';
    this.file = file;
    this.faults = faults;
  }
}
