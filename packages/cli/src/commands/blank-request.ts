import { OutlineError, type OutlineFamily, type OutlineSizes } from '@stripwright/strip-geometry';
import { CommandError, EXIT } from '../exit-code.js';
import { complaintText } from '../faults/fault-text.js';
import { foldSpelling, nearestSpelling } from '../faults/nearest-spelling.js';
import { parsePositiveLength } from '../length/parse-length.js';
import { SHOP_UNITS, type ShopUnits } from '../length/unit.js';
import { readChoice } from '../order/fields.js';
import type { CutterItem, Shop } from '../order/order.js';
import { readMark, USUAL_MARK } from '../order/read-mark.js';
import { readCornersText, readSizeText } from '../order/size-fields.js';
import type { Given } from './command.js';
import { readMaking } from './making-options.js';
import { type MetalRequest, readMetalRequest } from './metal-options.js';
import { OptionReader } from './option-reader.js';
import { optionKey, optionName } from './size-options.js';

/** One cutter, as asked for on the command line. */
export interface BlankRequest {
  /** The outline and its sizes, as given. */
  readonly title: string;
  readonly metal: MetalRequest;
  readonly item: CutterItem;
  readonly shop: Pick<Shop, 'rule' | 'metal' | 'bendRule'>;
}

/**
 * Reads the options of `stripwright blank`.
 * @throws CommandError with every option that cannot be used
 */
export function readBlankRequest(given: Given, families: readonly OutlineFamily[]): BlankRequest {
  const family = namedFamily(given.subject, families);
  const options = new OptionReader(given);
  const units = options.optional('units', (text) => readChoice(text, SHOP_UNITS)) ?? 'in';
  const mark = options.optional('mark', (text) => readMark(text, units)) ?? USUAL_MARK[units];
  const depth = options.required(
    'depth',
    (text) => parsePositiveLength(text, units),
    'the height of the finished cutter',
  );
  const making = readMaking(options, units);
  const metal = readMetalRequest(options, units);
  const sizes = sizesOf(family, families, options, units, given);
  options.raiseFaults();
  // Whatever is undefined by now has raised a fault.
  if (depth === undefined || metal === undefined || making === undefined)
    throw new Error('Options were not read.');
  const outline = drawn(family, sizes);
  const { name } = family;
  return {
    title: titleOf(family, given),
    metal,
    item: {
      kind: 'cutter',
      name,
      family: name,
      outline,
      depth,
      ...making,
      quantity: 1,
      mayTurn: true,
    },
    shop: { rule: { units, mark }, metal: metal.metal, bendRule: metal.bendRule },
  };
}

function namedFamily(word: string, families: readonly OutlineFamily[]): OutlineFamily {
  const family = families.find(({ name }) => foldSpelling(name) === foldSpelling(word));
  if (family !== undefined) return family;
  const choices = families.map(({ name }) => name);
  const nearest = nearestSpelling(word, choices);
  const complaint = { code: 'not a choice', choices, nearest } as const;
  throw new CommandError(EXIT.badInput, complaintText('the outline', complaint, word));
}

/** The sizes given, all of which must be sizes of this family. */
function sizesOf(
  family: OutlineFamily,
  families: readonly OutlineFamily[],
  options: OptionReader,
  units: ShopUnits,
  given: Given,
): OutlineSizes {
  const own = family.sizes.map(({ name }) => name);
  const all = new Set(families.flatMap(({ sizes }) => sizes.map(({ name }) => name)));
  for (const name of all) {
    const text = given.text(optionKey(name));
    if (text === undefined || own.includes(name)) continue;
    const known = own.map(optionName);
    options.complain(optionKey(name), { code: 'unknown size', outline: family.name, known });
  }
  const values = family.sizes.map(({ name, kind }) => {
    const value =
      kind === 'corners'
        ? options.optional(optionKey(name), (text) => readCornersText(text, units))
        : options.optional(optionKey(name), (text) => readSizeText(kind, text, units));
    return [name, value] as const;
  });
  return Object.fromEntries(values);
}

function drawn(family: OutlineFamily, sizes: OutlineSizes) {
  try {
    return family.draw(sizes);
  } catch (error) {
    if (!(error instanceof OutlineError)) throw error;
    const option = error.field === undefined ? family.name : optionName(error.field);
    throw new CommandError(EXIT.badInput, `${option}: ${error.message}`);
  }
}

/** `Regular polygon: sides 10, side 1 5/8` */
function titleOf({ name, sizes }: OutlineFamily, given: Given): string {
  const parts = sizes.flatMap(({ name: size }) => {
    const text = given.text(optionKey(size));
    return text === undefined ? [] : [`${size} ${text.trim()}`];
  });
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${parts.join(', ')}`;
}
