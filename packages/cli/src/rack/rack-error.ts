/** Why a rack refuses. The message says what is wrong and what to do about it. */
export type RackErrorCode =
  | 'not a rack'
  | 'newer version'
  | 'damaged'
  | 'cannot be opened'
  | 'cannot be written'
  | 'disk full'
  | 'busy'
  | 'no such mark'
  | 'not enough'
  | 'promised'
  | 'changed'
  | 'another rack'
  | 'booked already'
  | 'let go already'
  | 'not held'
  | 'nothing to undo'
  | 'cannot be undone'
  | 'no such layout'
  | 'bad value';

/** A rack that cannot be opened, or a change that it refuses. Nothing was changed. */
export class RackError extends Error {
  readonly code: RackErrorCode;

  constructor(code: RackErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'RackError';
    this.code = code;
  }
}
