import { type AirframePrint, airframe, airframePrints } from './airframe.js';
import { BendError } from './bend-error.js';
import type { BendRule } from './bend-rule.js';
import { type HandbookMetal, handbook, handbookMetals } from './handbook.js';
import { neutralAxis } from './neutral-axis.js';
import { steelStandard } from './steel-standard.js';
import { zeroThickness } from './zero-thickness.js';

/** What rules are made from. Millimetres; which ones a rule needs is in its list. */
export interface BendRuleSizes {
  readonly thickness?: number;
  readonly insideRadius?: number;
  readonly factor?: number;
  readonly print?: AirframePrint;
  readonly metal?: HandbookMetal;
}

/** One thing that a rule is made from. */
export interface BendRuleField {
  readonly name: keyof BendRuleSizes;
  readonly kind: 'length' | 'factor' | 'choice';
  /** The values that a choice has, the usual one first. */
  readonly choices?: readonly string[];
  readonly required: boolean;
  readonly meaning: string;
}

/** A bend rule that can be asked for by name. */
export interface BendRuleKind {
  readonly name: string;
  /** One line for help texts. */
  readonly summary: string;
  readonly fields: readonly BendRuleField[];
  /** Where the formula comes from. */
  readonly source: string;
  /**
   * Makes the rule; sizes that it does not use are ignored.
   * @throws BendError naming the size that is missing or out of range.
   */
  make(sizes: BendRuleSizes): BendRule;
}

const thickness: BendRuleField = {
  name: 'thickness',
  kind: 'length',
  required: true,
  meaning: 'thickness of the metal',
};

const insideRadius: BendRuleField = {
  name: 'insideRadius',
  kind: 'length',
  required: true,
  meaning: 'radius of the inside face of a sharp bend',
};

const FACTOR_MEANING = 'depth of the neutral line, as a part of the thickness';

/** Every bend rule, in the order help texts list them. */
export const bendRules: readonly BendRuleKind[] = [
  {
    name: 'zero thickness',
    summary: 'Every bend is sharp and the metal has no thickness: the rule of the bench.',
    fields: [],
    source: 'common practice',
    make: () => zeroThickness(),
  },
  {
    name: 'neutral axis',
    summary: 'A bend takes up A (R + factor T), A in radians, with a factor found by trial.',
    fields: [
      thickness,
      insideRadius,
      { name: 'factor', kind: 'factor', required: true, meaning: FACTOR_MEANING },
    ],
    source: "Machinery's Handbook, bending sheet metal",
    make: (sizes) =>
      neutralAxis({
        ...metalOf('neutral axis', sizes),
        factor: needed('neutral axis', 'factor', sizes.factor),
      }),
  },
  {
    name: 'airframe',
    summary: 'A bend takes up N (0.01743 R + 0.0078 T) for N degrees; 0.0173 in the Navy’s print.',
    fields: [
      thickness,
      insideRadius,
      {
        name: 'print',
        kind: 'choice',
        choices: airframePrints,
        required: false,
        meaning: 'whose print of the constants',
      },
    ],
    source: 'FAA-H-8083-31, chapter 4 (from memory); Navy aviation training manual',
    make: (sizes) =>
      airframe({
        ...metalOf('airframe', sizes),
        ...(sizes.print === undefined ? {} : { print: sizes.print }),
      }),
  },
  {
    name: 'steel standard',
    summary:
      'A bend takes up A (r + k s / 2), A in radians, k = 0.65 + 0.5 log10(r / s), at most 1.',
    fields: [thickness, insideRadius],
    source: 'DIN 6935 (from memory)',
    make: (sizes) => steelStandard(metalOf('steel standard', sizes)),
  },
  {
    name: 'handbook',
    summary: 'A square bend takes up 0.55, 0.64 or 0.71 T by the metal, and 1.57 R.',
    fields: [
      thickness,
      insideRadius,
      {
        name: 'metal',
        kind: 'choice',
        choices: handbookMetals,
        required: true,
        meaning: 'soft (copper, brass), half hard (soft steel, tinplate) or hard',
      },
    ],
    source: "Machinery's Handbook, bending sheet metal (from memory)",
    make: (sizes) =>
      handbook({ ...metalOf('handbook', sizes), metal: needed('handbook', 'metal', sizes.metal) }),
  },
];

/** The bend rule of that name, such as `neutral axis`, or undefined if there is none. */
export function bendRuleNamed(name: string): BendRuleKind | undefined {
  return bendRules.find((rule) => rule.name === name);
}

function metalOf(rule: string, sizes: BendRuleSizes): { thickness: number; insideRadius: number } {
  return {
    thickness: needed(rule, 'thickness', sizes.thickness),
    insideRadius: needed(rule, 'insideRadius', sizes.insideRadius),
  };
}

function needed<T>(rule: string, name: keyof BendRuleSizes, value: T | undefined): T {
  if (value === undefined) {
    throw new BendError('missing', `The bend rule "${rule}" needs "${name}"; got none.`, name);
  }
  return value;
}
