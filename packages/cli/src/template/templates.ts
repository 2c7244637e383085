import { writeSvg } from '../drawing/svg-sink.js';
import type { Block, Planned, Section } from '../job-sheet/job-sheet.js';
import { printSize, type Rule } from '../length/print-length.js';
import type { PlanFileBlank } from '../plan-file/plan-file.js';
import { CUTTING_CAUTIONS } from '../report/cautions.js';
import { counted } from '../report/counted.js';
import { refoldText } from '../report/refold-text.js';
import { warningLines } from '../report/warning-lines.js';
import { makingSteps } from './making-steps.js';
import { markBlocks } from './mark-blocks.js';
import { templatePages } from './template-pages.js';
import { templatesToDraw } from './templates-to-draw.js';

/** A section for each strip that is bent: its steps, its running marks, and its template at true size. */
export function templates(planned: Planned): readonly Section[] {
  return templatesToDraw(planned).map((template): Section => {
    const { number, name, rule } = template;
    const id = `template-${number}`;
    const blank = planned.file.blanks[number - 1];
    return {
      id,
      title: `Template ${number}: ${name}`,
      onNewPage: true,
      blocks: [
        ...(blank === undefined ? [] : facts(blank, id, rule)),
        { kind: 'caution', lines: CUTTING_CAUTIONS },
        ...templatePages(template).map((drawing): Block => {
          return { kind: 'picture', drawing, trueScale: true };
        }),
      ],
    };
  });
}

function facts(blank: PlanFileBlank, id: string, rule: Rule): readonly Block[] {
  const { strip, length, width, quantity } = blank;
  if (strip === undefined) return [];
  const warnings = strip.warnings ?? [];
  const words = [
    `Strip ${printSize(length, width, rule)}, ${counted(quantity, 'piece')}.`,
    refoldText(strip, rule),
    ...(warnings.length === 0
      ? []
      : ['Before cutting, think of this:', ...paragraphs(warningLines(warnings, rule))]),
  ];
  return [
    ...words.flatMap((text): readonly Block[] =>
      text === undefined ? [] : [{ kind: 'words', text }],
    ),
    makingSteps(id, strip, rule),
    ...markBlocks(strip, rule),
  ];
}

/** Lines that a report breaks at 80 columns, joined again: a further line of a paragraph is set in more. */
function paragraphs(lines: readonly string[]): readonly string[] {
  const joined: string[] = [];
  for (const line of lines) {
    const last = joined.pop();
    if (last === undefined || !line.startsWith('    ')) {
      joined.push(...(last === undefined ? [] : [last]), line.trim());
    } else {
      joined.push(`${last} ${line.trim()}`);
    }
  }
  return joined;
}

export interface TemplateFile {
  /** `template-3.svg`, or `template-3-2.svg` for the second page of several. */
  readonly name: string;
  readonly svg: string;
}

/** The templates as files to print one by one. */
export function templateFiles(planned: Planned): readonly TemplateFile[] {
  return templatesToDraw(planned).flatMap((template) => {
    const pages = templatePages(template);
    return pages.map((drawing, index) => {
      const page = pages.length === 1 ? '' : `-${index + 1}`;
      return { name: `template-${template.number}${page}.svg`, svg: writeSvg(drawing) };
    });
  });
}
