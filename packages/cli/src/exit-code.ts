/** What the command's exit code means. Named in the help texts and the README. */
export const EXIT = {
  done: 0,
  /** A fault of ours: a bug, or a plan that its own verifier refuses. */
  ourFault: 1,
  /** Options, an order, a plan file, or a rack that cannot be used as given. */
  badInput: 2,
  /** An order that is well formed, but that cannot be cut from its stock. */
  cannotBeCut: 3,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** For the end of help texts. */
export const EXIT_CODE_HELP = [
  'Exit codes: 0 done; 1 a fault of stripwright itself; 2 options, an order, a plan',
  'or a rack that cannot be used as given; 3 an order that cannot be cut from its',
  'stock.',
].join('\n');

/** Ends a command with a message for its user. */
export class CommandError extends Error {
  readonly exitCode: ExitCode;

  constructor(exitCode: ExitCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'CommandError';
    this.exitCode = exitCode;
  }
}
