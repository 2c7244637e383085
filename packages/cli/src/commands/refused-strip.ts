import { BendError, type Seam, StripError } from '@stripwright/strip-geometry';
import { CommandError, EXIT } from '../exit-code.js';
import { inUnits } from '../length/in-units.js';
import type { ShopUnits } from '../length/unit.js';
import { faultyField } from '../order/strips.js';
import { optionName } from './size-options.js';

/** Options whose fields go by other names in the geometry. */
const OPTIONS: Readonly<Record<string, string>> = {
  length: 'fits length',
  'stock length': 'longest',
};

/**
 * What `make` makes, its refusals told by the option at fault.
 *
 * @param what names what is made, where no option is at fault
 * @throws CommandError
 */
export async function orRefused<T>(
  what: string,
  seam: Seam,
  units: ShopUnits,
  make: () => T | Promise<T>,
): Promise<T> {
  try {
    return await make();
  } catch (error) {
    if (!(error instanceof StripError) && !(error instanceof BendError)) throw error;
    const field = faultyField(error, seam);
    const option = field === undefined ? what : optionName(OPTIONS[field] ?? field);
    throw new CommandError(EXIT.badInput, `${option}: ${inUnits(error.message, units)}`);
  }
}
