import type { NamedLength } from '@stripwright/strip-geometry';
import { choiceText } from '../faults/fault-text.js';
import { parseLength } from '../length/parse-length.js';
import { MILLIMETRES, type ShopUnits } from '../length/unit.js';
import {
  chooseEdge,
  chooseSeam,
  EDGE_LENGTHS,
  EDGE_NAMES,
  SEAM_LENGTHS,
  SEAM_NAMES,
  type Wanted,
} from '../order/edge-and-seam.js';
import { HEM_FACES, SIZE_FACES } from '../order/faces.js';
import { readAngle, readChoice } from '../order/fields.js';
import {
  HANDWORK_NUMBERS,
  type Handwork,
  HEM_STAGES,
  handworkOf,
  readHandworkNumber,
  readHemStage,
} from '../order/handwork.js';
import type { Making } from '../order/order.js';
import { readSeamPlace } from '../order/seam-place.js';
import { textOption } from './command.js';
import type { OptionReader } from './option-reader.js';
import { optionKey } from './size-options.js';

const GROUP = 'Edge and seam:';
const HANDWORK = 'Notches, and the limits of hand and tool:';

// Common practice for hand-made cutters of thin tinplate.
const USUAL_HEM: Readonly<Record<ShopUnits, number>> = { in: MILLIMETRES.in / 4, mm: 6 };
const USUAL_TAB: Readonly<Record<ShopUnits, number>> = { in: MILLIMETRES.in / 2, mm: 12 };

/** What is worth adding to the meaning of a length. */
const NOTES: Readonly<Record<string, string>> = {
  hem: ', 0 for a raw edge (usually 1/4 in or 6 mm)',
  tab: ', 0 for a butt joint (usually 1/2 in or 12 mm)',
};

/** Options for the edge, the seam, and every length that some kind of them needs. */
export const MAKING_OPTIONS = {
  edge: textOption(`${choiceText(EDGE_NAMES.map(optionKey))} (usually single-hem)`, GROUP),
  ...lengthOptions(EDGE_LENGTHS),
  'hem-face': textOption(
    'face of the wall it is folded to: outside (the default) or inside',
    GROUP,
  ),
  seam: textOption(`${choiceText(SEAM_NAMES.map(optionKey))} (usually tucked-tab)`, GROUP),
  ...lengthOptions(SEAM_LENGTHS),
  'seam-at': textOption(
    'where the ends meet: the number of a corner, a distance along the outline, or middle',
    GROUP,
  ),
  'size-is': textOption(`what the outline is the size of: ${choiceText(SIZE_FACES)}`),
  'corner-angle': textOption('degrees; corners that turn no more are formed, not bent'),
  'hem-stage': textOption(
    `how far the hem is folded while the strip is bent: ${choiceText(HEM_STAGES)} (usually closed)`,
    HANDWORK,
  ),
  ...Object.fromEntries(
    HANDWORK_NUMBERS.map(({ name, meaning }) => [optionKey(name), textOption(meaning, HANDWORK)]),
  ),
};

/** Reads how a cutter is made; undefined where its edge or seam cannot be, which is told. */
export function readMaking(options: OptionReader, units: ShopUnits): Making | undefined {
  const wanted = (
    key: 'edge' | 'seam',
    names: readonly string[],
    lengths: readonly NamedLength[],
  ) =>
    ({
      name: options.optional(key, (text) => readChoice(text, names)),
      lengths: Object.fromEntries(
        lengths.map(({ name }) => [
          name,
          options.optional(optionKey(name), (text) => parseLength(text, units)),
        ]),
      ),
    }) satisfies Wanted;
  const usual = (lengths: Wanted['lengths']): Wanted => ({ name: undefined, lengths });
  const edge = chooseEdge(
    wanted('edge', EDGE_NAMES, EDGE_LENGTHS),
    usual({ hem: USUAL_HEM[units] }),
  );
  const seam = chooseSeam(
    wanted('seam', SEAM_NAMES, SEAM_LENGTHS),
    usual({ tab: USUAL_TAB[units] }),
  );
  const seamAt = options.optional('seam-at', (text) => readSeamPlace(text, units));
  const hemFace = options.optional('hem-face', (text) => readChoice(text, HEM_FACES)) ?? 'outside';
  const sizeIs = options.optional('size-is', (text) => readChoice(text, SIZE_FACES)) ?? 'inside';
  const cornerAngle = options.optional('corner-angle', readAngle);
  const handwork = readHandwork(options, units);
  for (const { name, complaint } of [edge, seam].flatMap((one) => (one.ok ? [] : one.faults))) {
    options.complainOnce(optionKey(name), complaint);
  }
  if (!edge.ok || !seam.ok) return undefined;
  return { edge: edge.value, hemFace, seam: seam.value, seamAt, sizeIs, cornerAngle, handwork };
}

function readHandwork(options: OptionReader, units: ShopUnits): Handwork {
  const hemStage = options.optional('hem-stage', readHemStage);
  return handworkOf(hemStage, (field) =>
    options.optional(optionKey(field.name), (text) => readHandworkNumber(field, text, units)),
  );
}

function lengthOptions(lengths: readonly NamedLength[]) {
  return Object.fromEntries(
    lengths.map(({ name, meaning }) => [
      optionKey(name),
      textOption(`${meaning}${NOTES[name] ?? ''}`, GROUP),
    ]),
  );
}
