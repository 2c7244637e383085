import type { OutlineFamily } from '@stripwright/strip-geometry';
import type { Environment } from '../environment.js';
import { parsePositiveLength } from '../length/parse-length.js';
import { SHOP_UNITS } from '../length/unit.js';
import { readChoice } from '../order/fields.js';
import type { CutterItem, Shop } from '../order/order.js';
import { readMark, USUAL_MARK } from '../order/read-mark.js';
import type { Given } from './command.js';
import { readMaking } from './making-options.js';
import { type MetalRequest, readMetalRequest } from './metal-options.js';
import { OptionReader } from './option-reader.js';
import { readOutlineRequest } from './outline-options.js';

/** One outline or those of a drawing, as asked for on the command line. */
export interface BlankRequest {
  readonly cutters: readonly CutterRequest[];
  readonly metal: MetalRequest;
  readonly shop: Pick<Shop, 'rule' | 'metal' | 'bendRule'>;
}

export interface CutterRequest {
  /** The outline and its sizes, as given. */
  readonly title: string;
  readonly item: CutterItem;
}

/**
 * Reads the options of `stripwright blank`, and the drawing if one is named.
 * @throws CommandError with every option that cannot be used, DocumentError
 *   where the drawing cannot be read
 */
export async function readBlankRequest(
  given: Given,
  families: readonly OutlineFamily[],
  environment: Environment,
): Promise<BlankRequest> {
  const options = new OptionReader(given);
  const units = options.optional('units', (text) => readChoice(text, SHOP_UNITS)) ?? 'in';
  const mark = options.optional('mark', (text) => readMark(text, units)) ?? USUAL_MARK[units];
  const rule = { units, mark };
  const draw = readOutlineRequest(given, families, options, rule);
  const depth = options.required(
    'depth',
    (text) => parsePositiveLength(text, units),
    'the height of the finished cutter',
  );
  const making = readMaking(options, units);
  const metal = readMetalRequest(options, units);
  options.raiseFaults();
  // Whatever is undefined by now has raised a fault.
  if (depth === undefined || metal === undefined || making === undefined)
    throw new Error('Options were not read.');
  const outlines = await draw(environment);
  return {
    cutters: outlines.map(({ title, name, family, outline }) => ({
      title,
      item: {
        kind: 'cutter',
        name,
        family,
        outline,
        depth,
        ...making,
        quantity: 1,
        mayTurn: true,
      },
    })),
    metal,
    shop: { rule, metal: metal.metal, bendRule: metal.bendRule },
  };
}
