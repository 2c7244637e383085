/** What is wrong with a bend. */
export type BendFault =
  /** A thickness, radius, factor or angle that no bend can have. */
  | 'out of range'
  /** A size that the bend rule needs and was not given. */
  | 'missing'
  /** A fold flat back on itself, which has no setback. */
  | 'folded flat'
  /** A corner that the bend's radius does not fit into. */
  | 'too sharp'
  /** A flat or curve that the bends at its ends use up. */
  | 'no room'
  /** A curve tighter than the metal is thick. */
  | 'too tight';

/** A bend that cannot be made. The message says what was found and what would be right. */
export class BendError extends Error {
  override readonly name = 'BendError';
  readonly code: BendFault;
  /** The input at fault, such as `factor`, where one is. */
  readonly field: string | undefined;

  constructor(code: BendFault, message: string, field?: string) {
    super(message);
    this.code = code;
    this.field = field;
  }
}
