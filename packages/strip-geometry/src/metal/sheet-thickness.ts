import { baseWeightThickness } from './base-weight.js';
import { checkPositive } from './check-positive.js';
import { copperThickness } from './copper-weight.js';
import { type GaugeTable, gaugeThickness } from './sheet-gauge.js';

/** How the trade says how thick a sheet is. */
export type SheetThickness =
  /** Millimetres, as steel is sold by the metre. */
  | { readonly by: 'millimetres'; readonly thickness: number }
  /** Pounds a base box, for tinplate. */
  | { readonly by: 'base weight'; readonly pounds: number }
  /** A gauge number and the table it is read in, for steel. */
  | { readonly by: 'gauge'; readonly table: GaugeTable; readonly gauge: number }
  /** Ounces a square foot, for copper. */
  | { readonly by: 'copper weight'; readonly ounces: number };

/**
 * Thickness in millimetres, however it is given.
 *
 * @throws MetalError if the figure is out of range or not in its table.
 */
export function sheetThickness(given: SheetThickness): number {
  switch (given.by) {
    case 'millimetres':
      checkPositive('thickness', given.thickness, 'mm');
      return given.thickness;
    case 'base weight':
      return baseWeightThickness(given.pounds);
    case 'gauge':
      return gaugeThickness(given.table, given.gauge);
    case 'copper weight':
      return copperThickness(given.ounces);
  }
}
