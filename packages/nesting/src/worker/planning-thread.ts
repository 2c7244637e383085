import { parentPort, workerData } from 'node:worker_threads';
import { planCutting } from '../plan-cutting.js';
import { ProblemError } from '../problem-error.js';
import type { ThreadMessage, ThreadTask } from './thread-messages.js';

/** The thread's own file: plans its task, tells what comes of it, and ends. */

const { problem, timeLimitSeconds, seed, calledOff } = workerData as ThreadTask;
const flag = new Int32Array(calledOff);

function tell(message: ThreadMessage): void {
  parentPort?.postMessage(message);
}

try {
  const outcome = await planCutting(problem, {
    signal: {
      get aborted() {
        return Atomics.load(flag, 0) !== 0;
      },
    },
    onProgress: (progress) => tell({ kind: 'progress', progress }),
    onPlan: (plan) => tell({ kind: 'plan', plan }),
    ...(timeLimitSeconds === undefined ? {} : { timeLimitSeconds }),
    ...(seed === undefined ? {} : { seed }),
  });
  tell({ kind: 'outcome', outcome });
} catch (error) {
  if (!(error instanceof ProblemError)) throw error;
  const { code, path, received } = error;
  const message = error.message.slice(`${path}: `.length);
  tell({ kind: 'refused', refusal: { code, path, message, received } });
}
