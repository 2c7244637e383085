export { planInWorker, type WorkerPlanOptions } from './plan-in-worker.js';
