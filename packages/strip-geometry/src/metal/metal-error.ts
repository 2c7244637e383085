/** A metal or a thickness that is not known. The message says what was found and what is known. */
export class MetalError extends Error {
  override readonly name = 'MetalError';
  /** The part of the request at fault, such as `gauge`. */
  readonly field: string;

  constructor(field: string, message: string) {
    super(message);
    this.field = field;
  }
}
