import { INCH } from './inch.js';
import { MetalError } from './metal-error.js';

/** Which gauge table a number is read in. The same number is another thickness in each. */
export type GaugeTable = 'uncoated' | 'galvanized';

/**
 * Thickness in inches by gauge number. `uncoated` is the Manufacturers'
 * Standard Gauge for steel; `galvanized` is the galvanized sheet gauge, which
 * counts the zinc. Source: published charts of both tables side by side.
 */
const INCHES: Readonly<Record<GaugeTable, ReadonlyMap<number, number>>> = {
  uncoated: new Map([
    [20, 0.0359],
    [22, 0.0299],
    [24, 0.0239],
    [25, 0.0209],
    [26, 0.0179],
    [27, 0.0164],
    [28, 0.0149],
    [29, 0.0135],
    [30, 0.012],
    [31, 0.0105],
    [32, 0.0097],
  ]),
  galvanized: new Map([
    [20, 0.0396],
    [22, 0.0336],
    [24, 0.0276],
    [25, 0.0247],
    [26, 0.0217],
    [27, 0.0202],
    [28, 0.0187],
    [29, 0.0172],
    [30, 0.0157],
    [31, 0.0142],
    [32, 0.0134],
  ]),
};

/** The gauge numbers that a table knows, ascending: thick to thin. */
export function gaugesOf(table: GaugeTable): readonly number[] {
  return [...INCHES[table].keys()];
}

/**
 * Thickness in millimetres of steel sheet of a gauge number, in the table that
 * is named. There is no default, since 24 gauge is 0.0239 in uncoated and
 * 0.0276 in galvanized.
 *
 * @throws MetalError if the table does not know the number.
 */
export function gaugeThickness(table: GaugeTable, gauge: number): number {
  const inches = INCHES[table].get(gauge);
  if (inches === undefined) {
    const message =
      `The gauge must be one of ${gaugesOf(table).join(', ')} in the ${table} table; ` +
      `got ${gauge}. Give other thicknesses in millimetres or inches.`;
    throw new MetalError('gauge', message);
  }
  return inches * INCH;
}
