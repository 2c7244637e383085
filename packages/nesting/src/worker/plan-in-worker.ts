import { Worker } from 'node:worker_threads';
import { checkOptions } from '../check-options.js';
import { checkProblem } from '../check-problem.js';
import type { CuttingPlan, PlanOutcome } from '../plan.js';
import { type PlanOptions, USUAL_SECONDS } from '../plan-cutting.js';
import type { CuttingProblem } from '../problem.js';
import { ProblemError } from '../problem-error.js';
import type { ThreadMessage, ThreadTask } from './thread-messages.js';

/** As for `planCutting`, but for what cannot be handed to another thread. */
export interface WorkerPlanOptions
  extends Pick<PlanOptions, 'timeLimitSeconds' | 'seed' | 'onProgress' | 'onPlan'> {
  /** Calls planning off; the best plan so far is returned. */
  readonly signal?: AbortSignal;
  /**
   * Seconds that a step may still take once planning is called off or its time is
   * over; then the thread is ended and the best plan so far returned. 2 when absent.
   */
  readonly graceSeconds?: number;
}

const USUAL_GRACE_SECONDS = 2;
/** A timer takes no more milliseconds. */
const LONGEST_TIMER = 2 ** 31 - 1;

/**
 * Plans as `planCutting` does, in a thread of its own, so that the caller's event
 * loop stays free. The thread is gone when the promise is settled.
 *
 * Called off before there is any plan, the outcome is `none found` where the
 * thread does not answer in time.
 * @throws ProblemError where the problem makes no sense as data, and whatever the
 *   planner, the thread or a callback throws
 */
export async function planInWorker(
  problem: CuttingProblem,
  options: WorkerPlanOptions = {},
): Promise<PlanOutcome> {
  // Here too, since what makes no sense may be nothing that can be handed over.
  checkProblem(problem);
  checkOptions(options);
  const calledOff = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const { timeLimitSeconds, seed } = options;
  const task: ThreadTask = { problem, timeLimitSeconds, seed, calledOff };
  // No flags of the command line: some of them suit a first file only.
  const thread = new Worker(new URL('./planning-thread.js', import.meta.url), {
    workerData: task,
    execArgv: [],
  });
  let watch: Watch | undefined;
  try {
    watch = new Watch(thread, new Int32Array(calledOff), options);
    return await watch.outcome;
  } finally {
    watch?.end();
    await thread.terminate();
  }
}

/** Waits for a planning thread, but not for longer than it may take. */
class Watch {
  readonly outcome: Promise<PlanOutcome>;
  readonly #options: WorkerPlanOptions;
  readonly #flag: Int32Array;
  readonly #timers: NodeJS.Timeout[] = [];
  #settle: (outcome: PlanOutcome) => void = () => undefined;
  #best: CuttingPlan | undefined;
  #bound = 0;
  /** Its time is over: the next plan will do. */
  #late = false;

  constructor(thread: Worker, flag: Int32Array, options: WorkerPlanOptions) {
    this.#options = options;
    this.#flag = flag;
    this.outcome = new Promise((resolve, reject) => {
      this.#settle = resolve;
      thread.on('message', (message: ThreadMessage) => {
        try {
          this.#hear(message);
        } catch (error) {
          reject(error);
        }
      });
      thread.on('messageerror', reject);
      thread.on('error', reject);
      thread.on('exit', (code) =>
        reject(new Error(`the planning thread ended without an answer, with code ${code}`)),
      );
    });
    const { signal, timeLimitSeconds = USUAL_SECONDS } = options;
    this.#after(timeLimitSeconds, () => {
      this.#late = true;
      if (this.#best !== undefined) this.#settle(this.#soFar('time limit'));
    });
    if (signal?.aborted === true) this.#callOff();
    else signal?.addEventListener('abort', this.#callOff, { once: true });
  }

  /** Lets go of everything that waits. */
  end(): void {
    this.#options.signal?.removeEventListener('abort', this.#callOff);
    for (const timer of this.#timers) clearTimeout(timer);
  }

  readonly #callOff = (): void => {
    Atomics.store(this.#flag, 0, 1);
    this.#after(0, () => this.#settle(this.#soFar('called off')));
  };

  /** Does it after so many seconds and those of grace. */
  #after(seconds: number, what: () => void): void {
    const milliseconds = (seconds + (this.#options.graceSeconds ?? USUAL_GRACE_SECONDS)) * 1000;
    if (milliseconds <= LONGEST_TIMER) this.#timers.push(setTimeout(what, milliseconds));
  }

  #hear(message: ThreadMessage): void {
    switch (message.kind) {
      case 'progress':
        this.#bound = Math.max(this.#bound, message.progress.bound);
        this.#options.onProgress?.(message.progress);
        return;
      case 'plan':
        this.#best = message.plan;
        this.#options.onPlan?.(message.plan);
        if (this.#late) this.#settle(this.#soFar('time limit'));
        return;
      case 'outcome':
        this.#settle(message.outcome);
        return;
      case 'refused': {
        const { code, path, message: text, received } = message.refusal;
        throw new ProblemError(code, path, text, received);
      }
    }
  }

  /** The best plan told of so far, with the best bound. */
  #soFar(ending: 'called off' | 'time limit'): PlanOutcome {
    if (this.#best === undefined) return { status: 'none found' };
    const { cost, bound, effort } = this.#best;
    const least = Math.min(cost, Math.max(bound.cost, this.#bound));
    return {
      status: 'planned',
      plan: {
        ...this.#best,
        bound: { cost: least, proven: least === cost },
        effort: { ...effort, ending },
      },
    };
  }
}
