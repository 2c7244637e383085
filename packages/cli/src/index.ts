export type { Environment, Files, Output, Planner } from './environment.js';
export { EXIT, type ExitCode } from './exit-code.js';
export { main } from './main.js';
export { nodeEnvironment } from './node-environment.js';
export type { PlanFile } from './plan-file/plan-file.js';
