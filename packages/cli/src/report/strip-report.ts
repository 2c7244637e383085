import { type BendRule, foodWarning, type Metal } from '@stripwright/strip-geometry';
import { printSize, printThickness, type Rule } from '../length/print-length.js';
import type { PlanFileBlank, PlanFileStrip } from '../plan-file/plan-file.js';
import { CUTTING_CAUTIONS } from './cautions.js';
import { edgeText, seamText } from './edge-and-seam-text.js';
import { notchText, snipText } from './hem-cuts-text.js';
import { bendTable, curveTable } from './mark-tables.js';
import { refoldText } from './refold-text.js';
import { wrap } from './table.js';
import { warningLines } from './warning-lines.js';

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
    ...fact('Notches', notchText(strip)),
    ...fact('Snips', snipText(strip, rule)),
    ...fact('Metal', metalText(report.metal, rule)),
    ...fact('Bend rule', report.metal.bendRule.name),
    '',
    ...bendTable(strip, rule),
    ...curveTable(strip, rule),
    ...paragraph(refoldText(strip, rule)),
    ...warnings(strip, rule),
  ];
}

/** What ends a report of strips: whether the metal may touch food, and how to cut it safely. */
export function stripCautions(metal: Metal): readonly string[] {
  const food = foodWarning(metal);
  return [...(food === undefined ? [] : [...wrap(food), '']), ...CUTTING_CAUTIONS];
}

const FACT_NAME_WIDTH = 11;

/** `  Strip      17 x 1 in`, with what is too long on lines of its own. */
function fact(name: string, text: string | undefined): readonly string[] {
  if (text === undefined) return [];
  return wrap(`  ${name.padEnd(FACT_NAME_WIDTH)}${text}`, ' '.repeat(2 + FACT_NAME_WIDTH));
}

/** `tinplate, 0.011 in thick` */
function metalText({ metal, thickness }: MetalOfStrip, { units }: Rule): string {
  if (thickness === undefined) return metal.name;
  return `${metal.name}, ${printThickness(thickness, units)} thick`;
}

function paragraph(text: string | undefined): readonly string[] {
  return text === undefined ? [] : ['', ...wrap(text)];
}

function warnings({ warnings: found = [] }: PlanFileStrip, rule: Rule): readonly string[] {
  if (found.length === 0) return [];
  return ['', 'Before cutting, think of this:', ...warningLines(found, rule)];
}
