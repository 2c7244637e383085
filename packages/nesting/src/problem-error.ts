/** What a problem can be refused for. */
export type ProblemFault =
  | 'no pieces'
  | 'no stock'
  | 'nothing wanted'
  | 'too many to compute'
  | 'id used twice'
  | 'not a name'
  | 'not one of the choices'
  | 'not a whole number'
  | 'not a positive number'
  | 'not a finite number'
  | 'too large to compute exactly'
  | 'not whole packs'
  | 'kerf wider than trim'
  | 'trim leaves nothing'
  | 'two rules for one metal'
  | 'rule above price'
  | 'book value below rule';

/** A problem that makes no sense as data, whatever the shop. */
export class ProblemError extends Error {
  override readonly name = 'ProblemError';

  /**
   * @param code what is wrong
   * @param path where, such as `pieces[3].width`
   * @param message what was found and what would be right
   * @param received what stands there
   */
  constructor(
    readonly code: ProblemFault,
    readonly path: string,
    message: string,
    readonly received?: unknown,
  ) {
    super(`${path}: ${message}`);
  }
}
