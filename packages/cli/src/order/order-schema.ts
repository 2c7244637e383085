import { textField } from './fields.js';
import { itemSchema } from './item-schema.js';
import type { Order } from './order.js';
import type { OrderContext } from './order-context.js';
import { list, section } from './sections.js';
import { shopSchema } from './shop-schema.js';
import { offcutSchema, sheetSchema } from './stock-schema.js';

/** The whole order. Its fields are described in the package's README. */
export function orderSchema(context: OrderContext) {
  return section({
    name: textField('a name for the report and the cut maps'),
    shop: shopSchema(context),
    sheets: list(sheetSchema(context), 'the sizes of sheet').optional(),
    offcuts: list(offcutSchema(context), 'the offcuts in the shop').optional(),
    items: list(itemSchema(context), 'the cutters to make', 1),
  }).transform(
    ({ name, shop, sheets = [], offcuts = [], items }): Order => ({
      name,
      shop,
      sheets,
      offcuts,
      items,
    }),
  );
}
