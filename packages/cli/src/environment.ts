import type {
  CuttingPlan,
  CuttingProblem,
  PlanFault,
  PlanOutcome,
  PlanProgress,
} from '@stripwright/nesting';
import type { Racks } from './rack/rack.js';

/** Everything outside the program that it touches, so that all of it runs inside a test. */
export interface Environment {
  /** The folder that relative paths start from. */
  readonly cwd: string;
  readonly stdout: Output;
  readonly stderr: Output;
  readonly files: Files;
  /** Milliseconds, from any start. */
  readonly clock: () => number;
  readonly planner: Planner;
  readonly interrupts: Interrupts;
  /** Asks the user; absent where there is nobody at a terminal to answer. */
  readonly ask?: Ask;
  readonly racks: Racks;
  /** The absolute path of the rack of a user who names none. */
  readonly usualRack: string;
}

/**
 * Puts a question to the user and waits for a line.
 * @returns the line without its end, or undefined where the user ends the input instead
 */
export type Ask = (question: string) => Promise<string | undefined>;

/** The user's wish to stop what runs: Ctrl-C. */
export interface Interrupts {
  /**
   * Calls back at the next one, once; those after it end the program at once.
   * @returns what ends the waiting
   */
  once(told: () => void): () => void;
}

export interface Output {
  /** True where a person watches, so that a passing note makes sense. */
  readonly isTerminal: boolean;
  /** True where it may be written to in colour. */
  readonly colour?: boolean;
  write(text: string): void;
}

/** The file system. Paths are absolute; failures are Node's errors with their `code`. */
export interface Files {
  /** The whole file as UTF-8 text, without a byte order mark. */
  read(path: string): Promise<string>;
  write(path: string, content: string | Uint8Array): Promise<void>;
  /** A new file, whole or not at all. Fails with EEXIST where one is there. */
  create(path: string, text: string): Promise<void>;
  /** Replaces what is there in one step. */
  rename(from: string, to: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** Makes the folder and those above it, unless they are there. */
  makeFolder(path: string): Promise<void>;
  /** Names of what the folder holds. */
  list(path: string): Promise<readonly string[]>;
}

/** The planning library, so that a test can put a faulty one in its place. */
export interface Planner {
  planCutting(
    problem: CuttingProblem,
    options?: {
      readonly timeLimitSeconds?: number;
      readonly seed?: number;
      readonly signal?: AbortSignal;
      readonly onProgress?: (progress: PlanProgress) => void;
    },
  ): Promise<PlanOutcome>;
  verifyPlan(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault[];
}
