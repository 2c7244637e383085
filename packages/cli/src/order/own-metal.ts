import type { Metal } from '@stripwright/strip-geometry';
import type { z } from 'zod';
import { choiceField, complain, field, readText } from './fields.js';
import type { OwnMetal, Shop } from './order.js';
import type { OrderContext } from './order-context.js';
import { METAL_NAMES, metalSpelt, readThickness } from './thickness.js';

/** The fields by which a sheet or an offcut says what it is of. */
export const ownMetalFields = () => ({
  metal: choiceField(METAL_NAMES).optional(),
  thickness: field(readText, { code: 'not a thickness' }).optional(),
});

/** Whether a stock is of the metal and thickness that cutters are made of. */
export function isOfShopMetal(
  { own }: { readonly own?: OwnMetal | undefined },
  { metal, thickness }: Pick<Shop, 'metal' | 'thickness'>,
): boolean {
  if (own === undefined) return true;
  return own.metal.name === metal.name && (own.thickness ?? thickness) === thickness;
}

/**
 * What a sheet or an offcut is of; undefined where it says nothing. A thickness
 * is read by its own metal, since gauges are.
 */
export function readOwnMetal(
  read: { readonly metal?: string | undefined; readonly thickness?: string | undefined },
  { metal: shop, rule }: OrderContext,
  issues: z.RefinementCtx,
): OwnMetal | undefined {
  if (read.metal === undefined && read.thickness === undefined) return undefined;
  const metal: Metal = read.metal === undefined ? shop : metalSpelt(read.metal);
  if (read.thickness === undefined) return { metal };
  const thickness = readThickness(read.thickness, metal, rule.units);
  if (thickness.ok) return { metal, thickness: thickness.value };
  complain(issues, read.thickness, thickness.complaint, ['thickness']);
  return undefined;
}
