/** What is wrong with an outline, or with the sizes it is drawn from. */
export type OutlineFault =
  | 'missing size'
  | 'unknown size'
  | 'wrong kind'
  | 'out of range'
  | 'contradictory sizes'
  | 'not a number'
  | 'not closed'
  | 'zero length'
  | 'bad arc'
  | 'clockwise'
  | 'repeated corner'
  | 'crosses itself';

/** An outline that cannot be drawn or made. The message says what was found and what would be right. */
export class OutlineError extends Error {
  override readonly name = 'OutlineError';
  readonly code: OutlineFault;
  /** The size at fault, such as `across flats`, where one is. */
  readonly field: string | undefined;

  constructor(code: OutlineFault, message: string, field?: string) {
    super(message);
    this.code = code;
    this.field = field;
  }
}
