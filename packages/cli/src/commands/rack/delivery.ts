import type { Environment } from '../../environment.js';
import type { ExitCode } from '../../exit-code.js';
import type { CommandExample, Given } from '../command.js';

/** One way to say what was delivered. One file each, and one line in the list of `receive`. */
export interface Delivery {
  /** What stands for it on the command line, such as `size`. */
  readonly subject: string;
  readonly meaning: string;
  readonly examples: readonly CommandExample[];
  /** Whether a subject is meant so. Of several, the first in the list is taken. */
  takes(subject: string): boolean;
  /** @throws CommandError, DocumentError, RackError */
  receive(given: Given, environment: Environment): Promise<ExitCode>;
}
