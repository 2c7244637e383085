import type { Outline, OutlineFamily } from '@stripwright/strip-geometry';
import type { Environment } from '../environment.js';
import { parsePositiveLength } from '../length/parse-length.js';
import { ticksDown } from '../length/ticks.js';
import { SHOP_UNITS } from '../length/unit.js';
import { readChoice } from '../order/fields.js';
import type { CutterItem, Shop } from '../order/order.js';
import { readMark, USUAL_MARK } from '../order/read-mark.js';
import { specOf } from '../order/strips.js';
import type { Given } from './command.js';
import { readMaking } from './making-options.js';
import { type MetalRequest, readMetalRequest } from './metal-options.js';
import { OptionReader } from './option-reader.js';
import { readOutlineRequest } from './outline-options.js';
import { orRefused } from './refused-strip.js';

/** One outline or those of a drawing, as asked for on the command line. */
export interface BlankRequest {
  readonly cutters: readonly CutterRequest[];
  /** Strips that are longer are divided; in whole marks, in millimetres. */
  readonly longest: number | undefined;
  readonly metal: MetalRequest;
  readonly shop: Pick<Shop, 'rule' | 'metal' | 'bendRule'>;
}

export interface CutterRequest {
  /** The outline and its sizes, as given. */
  readonly title: string;
  readonly item: CutterItem;
  readonly outline: Outline;
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
  const stock = (key: string) => {
    const length = options.optional(key, (text) => parsePositiveLength(text, units));
    return length === undefined ? undefined : ticksDown(length, mark) * mark;
  };
  const fitsLength = stock('fits-length');
  const longest = stock('longest');
  options.raiseFaults();
  // Whatever is undefined by now has raised a fault.
  if (depth === undefined || metal === undefined || making === undefined)
    throw new Error('Options were not read.');
  const shop = { rule, metal: metal.metal, bendRule: metal.bendRule };
  const itemOf = (name: string, family: string, outlines: readonly Outline[]): CutterItem => {
    return { kind: 'cutter', name, family, outlines, depth, ...making, quantity: 1, mayTurn: true };
  };
  const cutter = { ...specOf(itemOf('', '', [])), bendRule: shop.bendRule };
  const fit = fitsLength === undefined ? undefined : { length: fitsLength, cutter };
  const outlines = await orRefused(given.subject, making.seam, units, () => draw(environment, fit));
  return {
    cutters: outlines.map(({ title, name, family, outline }) => ({
      title,
      item: itemOf(name, family, [outline]),
      outline,
    })),
    longest,
    metal,
    shop,
  };
}
