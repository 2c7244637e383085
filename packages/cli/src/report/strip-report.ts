import { type BendRule, foodWarning, type Metal } from '@stripwright/strip-geometry';
import { printBareLength, printSize, printThickness, type Rule } from '../length/print-length.js';
import type { PlanFileBlank, PlanFileStrip } from '../plan-file/plan-file.js';
import { CUTTING_CAUTIONS } from './cautions.js';
import { edgeText, seamText } from './edge-and-seam-text.js';
import { table, wrap } from './table.js';

/** What the report of one strip says. */
export interface StripReport {
  /** What the cutter is: its outline and sizes, as given. */
  readonly title: string;
  readonly metal: MetalOfStrip;
  /** With its strip. */
  readonly blank: PlanFileBlank;
}

/** What a strip is cut from. */
export interface MetalOfStrip {
  readonly metal: Metal;
  /** In millimetres; absent where it was not given. */
  readonly thickness?: number | undefined;
  /** The rule that the strip was sized by. */
  readonly bendRule: BendRule;
}

/** The strip of one cutter and where to bend it. Lines of at most 80 columns. */
export function stripReport(report: StripReport, rule: Rule): readonly string[] {
  const { blank } = report;
  const { strip } = blank;
  const size = fact('Strip', printSize(blank.length, blank.width, rule));
  if (strip === undefined) return [...wrap(report.title, '  '), ...size];
  return [
    ...wrap(report.title, '  '),
    ...size,
    ...fact('Edge', edgeText(strip, rule)),
    ...fact('Seam', seamText(strip, rule)),
    ...fact('Metal', metalText(report.metal, rule)),
    ...fact('Bend rule', report.metal.bendRule.name),
    ...foodLines(report.metal),
    '',
    ...bendTable(strip, rule),
    ...curveTable(strip, rule),
    '',
    ...CUTTING_CAUTIONS,
  ];
}

const FACT_NAME_WIDTH = 11;
const UNIT_NAMES: Readonly<Record<Rule['units'], string>> = { in: 'inches', mm: 'millimetres' };

/** `  Strip      17 x 1 in`, with what is too long on lines of its own. */
function fact(name: string, text: string): readonly string[] {
  return wrap(`  ${name.padEnd(FACT_NAME_WIDTH)}${text}`, ' '.repeat(2 + FACT_NAME_WIDTH));
}

/** `tinplate, 0.011 in thick` */
function metalText({ metal, thickness }: MetalOfStrip, { units }: Rule): string {
  if (thickness === undefined) return metal.name;
  return `${metal.name}, ${printThickness(thickness, units)} thick`;
}

function foodLines({ metal }: MetalOfStrip): readonly string[] {
  const warning = foodWarning(metal);
  return warning === undefined ? [] : ['', ...wrap(warning)];
}

function bendTable({ bends }: PlanFileStrip, rule: Rule): readonly string[] {
  if (bends.length === 0) return ['No sharp bends.'];
  return [
    `Bends: each mark runs from the square end, in ${UNIT_NAMES[rule.units]}. "in" folds toward the`,
    'inside of the cutter. Degrees are those bent through: 90 is square.',
    ...table(
      [
        { heading: 'Bend', align: 'right' },
        { heading: 'Mark', align: 'right' },
        { heading: 'Fold', align: 'left' },
        { heading: 'Degrees', align: 'right' },
      ],
      bends.map(({ number, at, direction, angle }) => [
        `${number}`,
        printBareLength(at, rule),
        direction,
        angle.toFixed(1),
      ]),
    ),
  ];
}

function curveTable({ curves }: PlanFileStrip, rule: Rule): readonly string[] {
  if (curves.length === 0) return [];
  return [
    '',
    `Curves: formed between the marks, in ${UNIT_NAMES[rule.units]}; the radius is the tightest`,
    ...table(
      [
        { heading: 'From', align: 'right' },
        { heading: 'To', align: 'right' },
        { heading: 'Radius', align: 'right' },
        { heading: 'Form', align: 'left' },
        { heading: 'Degrees', align: 'right' },
      ],
      curves.map(({ from, to, radius, direction, angle }) => [
        printBareLength(from, rule),
        printBareLength(to, rule),
        printBareLength(Math.round(radius / rule.mark) * rule.mark, rule),
        direction,
        angle.toFixed(1),
      ]),
    ),
  ];
}
