/** Why a drawing cannot be read, or cannot be cut as drawn. */
export type SvgFault =
  | 'not well formed'
  | 'not svg'
  | 'too large'
  | 'bad number'
  | 'bad length'
  | 'bad path data'
  | 'bad transform'
  | 'bad reference'
  | 'not supported'
  | 'no closed shape'
  | 'open path'
  | 'crosses itself'
  | 'text'
  | 'image'
  | 'out of range'
  | 'too many bends'
  | 'contradictory sizes';

/** Where in the file an element stands. */
export interface SvgPlace {
  /** Name of the element, such as `path`. */
  readonly element: string;
  readonly id: string | undefined;
  /** Counted from 1. */
  readonly line: number;
  /** Counted from 1, in characters. */
  readonly column: number;
}

/** A drawing that cannot be read. The message says what was found, where, and what to do. */
export class SvgError extends Error {
  override readonly name = 'SvgError';
  readonly code: SvgFault;
  /** Undefined where the fault is not in one place of the file. */
  readonly place: SvgPlace | undefined;

  /** The place is put before the message. */
  constructor(code: SvgFault, message: string, place?: SvgPlace) {
    super(place === undefined ? message : `${printPlace(place)}: ${message}`);
    this.code = code;
    this.place = place;
  }
}

/** Such as `Line 12, column 3, path "outer"`. */
export function printPlace({ element, id, line, column }: SvgPlace): string {
  const named = id === undefined ? element : `${element} ${quote(id)}`;
  return `Line ${line}, column ${column}, ${named === '' ? 'the file' : named}`;
}

const MOST_QUOTED = 40;

/** Text of the file as a message may show it: on one line, and short. */
export function quote(text: string): string {
  const plain = text.replace(/[\p{Cc}\s]+/gu, ' ').trim();
  return `"${plain.length > MOST_QUOTED ? `${plain.slice(0, MOST_QUOTED)}...` : plain}"`;
}
