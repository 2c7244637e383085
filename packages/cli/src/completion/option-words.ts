import { families } from '@stripwright/strip-geometry';
import { optionKey } from '../commands/size-options.js';
import { SHOP_UNITS } from '../length/unit.js';
import { BEND_RULE_NAMES, RULE_SIZES } from '../order/bend-rule-sizes.js';
import { EDGE_NAMES, SEAM_NAMES } from '../order/edge-and-seam.js';
import { HEM_FACES, SIZE_FACES } from '../order/faces.js';
import { HEM_STAGES } from '../order/handwork.js';
import { ROLLED } from '../order/stock-schema.js';
import { METAL_NAMES } from '../order/thickness.js';

/** The words that an option takes, whatever its command; those of all others are free. */
export const OPTION_WORDS: Readonly<Record<string, readonly string[]>> = {
  units: SHOP_UNITS,
  edge: EDGE_NAMES.map(optionKey),
  'hem-face': HEM_FACES,
  seam: SEAM_NAMES.map(optionKey),
  'size-is': SIZE_FACES,
  'hem-stage': HEM_STAGES,
  metal: METAL_NAMES.map(optionKey),
  rolled: ROLLED,
  'bend-rule': BEND_RULE_NAMES.map(optionKey),
  ...Object.fromEntries(
    RULE_SIZES.flatMap(({ name, field }) =>
      field.kind === 'choice' ? [[optionKey(name), (field.choices ?? []).map(optionKey)]] : [],
    ),
  ),
};

/** The words that a command works on, by what its help calls it; those of all others are files. */
export const SUBJECT_WORDS: Readonly<Record<string, readonly string[]>> = {
  outline: families.map(({ name }) => optionKey(name)),
  shell: ['bash', 'zsh', 'fish'],
};
