/** What a problem can be refused for. */
export type ProblemFault =
  | 'no pieces'
  | 'no stock'
  | 'id used twice'
  | 'not a whole number'
  | 'too large to compute exactly';

/** A problem that makes no sense as data, whatever the shop. */
export class ProblemError extends Error {
  override readonly name = 'ProblemError';

  /**
   * @param code what is wrong
   * @param path where, such as `pieces[3].width`
   * @param message what was found and what would be right
   */
  constructor(
    readonly code: ProblemFault,
    readonly path: string,
    message: string,
  ) {
    super(`${path}: ${message}`);
  }
}
