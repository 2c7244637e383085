import type { Answer, LinearModel } from './linear-model.js';

/** How far a row, a bound or an integer may be missed by a continuous answer. */
const TOLERANCE = 1e-6;

export type CheckedAnswer =
  | Answer
  /** The engine claimed something that its own values contradict. */
  | { readonly status: 'rejected'; readonly why: string };

/**
 * Recomputes an engine's answer from the model: integrality, bounds, rows and
 * objective. Integral values come back exactly whole, and their rows are then
 * summed without any tolerance, since the coefficients of our integer masters
 * are whole numbers too.
 */
export function checkAnswer(model: LinearModel, answer: Answer, integer: boolean): CheckedAnswer {
  if (answer.status === 'infeasible' || answer.values === undefined) return answer;
  if (answer.values.length !== model.columns.length) {
    return {
      status: 'rejected',
      why: `${answer.values.length} values for ${model.columns.length} columns`,
    };
  }
  const values = integer ? answer.values.map(Math.round) : [...answer.values];
  for (let j = 0; j < values.length; j++) {
    if (!Number.isFinite(values[j])) return { status: 'rejected', why: `column ${j} is no number` };
    if (integer && Math.abs(values[j] - answer.values[j]) > TOLERANCE) {
      return { status: 'rejected', why: `column ${j} is ${answer.values[j]}, not a whole number` };
    }
    const slack = integer ? 0 : TOLERANCE * Math.max(1, Math.abs(values[j]));
    const { lower = 0, upper } = model.columns[j];
    if (values[j] < lower - slack || values[j] > upper + slack) {
      return { status: 'rejected', why: `column ${j} is ${values[j]}, outside its bounds` };
    }
  }
  const fault = rowFault(model, values, integer);
  if (fault !== undefined) return { status: 'rejected', why: fault };
  const objective = model.columns.reduce((sum, column, j) => sum + column.cost * values[j], 0);
  const claimed = answer.objective ?? Number.NaN;
  if (!(Math.abs(objective - claimed) <= TOLERANCE * Math.max(1, Math.abs(objective)))) {
    return { status: 'rejected', why: `objective claimed ${claimed}, recomputed ${objective}` };
  }
  if (answer.status === 'optimal' && answer.duals.length !== (integer ? 0 : model.rows.length)) {
    return {
      status: 'rejected',
      why: `${answer.duals.length} duals for ${model.rows.length} rows`,
    };
  }
  return { ...answer, values, objective };
}

function rowFault(
  model: LinearModel,
  values: readonly number[],
  integer: boolean,
): string | undefined {
  const activity = new Float64Array(model.rows.length);
  model.columns.forEach((column, j) => {
    column.rows.forEach((row, k) => {
      activity[row] += column.coefficients[k] * values[j];
    });
  });
  const missed = model.rows.findIndex((row, i) => {
    const slack = integer ? 0 : TOLERANCE * Math.max(1, Math.abs(row.bound));
    const tooLittle = row.sense !== 'at most' && activity[i] < row.bound - slack;
    return tooLittle || (row.sense !== 'at least' && activity[i] > row.bound + slack);
  });
  if (missed < 0) return undefined;
  const row = model.rows[missed];
  return `row ${missed} must be ${row.sense} ${row.bound}, its values give ${activity[missed]}`;
}
