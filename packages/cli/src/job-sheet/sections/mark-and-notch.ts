import { oneLine } from '../../drawing/measure-text.js';
import { printSize } from '../../length/print-length.js';
import type { PlanFile } from '../../plan-file/plan-file.js';
import { edgeText } from '../../report/edge-and-seam-text.js';
import { notchText, snipText } from '../../report/hem-cuts-text.js';
import type { Planned, Section } from '../job-sheet.js';
import { HANDLING } from './cautions.js';
import { type Numbered, numbered, ruleOf } from './figures.js';

/** Hem lines, bend marks, notches and snips of each cutter, before it is bent. None for flat pieces alone. */
export function markAndNotch({ file }: Planned): readonly Section[] {
  const cutters = numbered(file).filter(({ blank }) => blank.strip !== undefined);
  if (cutters.length === 0) return [];
  return [
    {
      id: 'mark',
      title: 'Mark and notch the strips',
      onNewPage: false,
      blocks: [
        HANDLING,
        {
          kind: 'steps',
          steps: cutters.map((cutter) => ({
            id: `mark-${cutter.number}`,
            text: `Mark and notch ${cutter.count} of strip ${cutter.number}, ${oneLine(cutter.blank.id)}`,
            detail: whatToMark(cutter, file),
          })),
        },
      ],
    },
  ];
}

function whatToMark({ blank }: Numbered, file: PlanFile): string {
  const rule = ruleOf(file);
  const { strip } = blank;
  const parts = [printSize(blank.length, blank.width, rule)];
  if (strip !== undefined) {
    parts.push(edgeText(strip, rule));
    const [notches, snips] = [notchText(strip), snipText(strip, rule)];
    if (notches !== undefined) parts.push(notches);
    if (snips !== undefined) parts.push(`snips: ${snips}`);
  }
  return parts.join('; ');
}
