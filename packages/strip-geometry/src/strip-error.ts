/** A strip that cannot be made as asked. The message says what was found and what would be right. */
export class StripError extends Error {
  override readonly name = 'StripError';
  /** The part of the request at fault, such as `depth`. */
  readonly field: string;

  constructor(field: string, message: string) {
    super(message);
    this.field = field;
  }
}
