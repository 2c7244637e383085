import { printBareLength } from '../../length/print-length.js';
import type { Planned, Section } from '../job-sheet.js';
import { numbered, ruleOf, UNIT_NAMES } from './figures.js';

/** Every strip and flat piece by its number, with its size and how many come off the sheets. */
export function stripList({ file }: Planned): Section {
  const rule = ruleOf(file);
  const spares = file.spares.length > 0;
  return {
    id: 'strips',
    title: 'The strips',
    onNewPage: false,
    blocks: [
      {
        kind: 'table',
        caption: `Lengths in ${UNIT_NAMES[rule.units]}; the numbers are those on the cut maps`,
        columns: [
          { heading: 'No', align: 'right' },
          { heading: 'Name', align: 'left' },
          { heading: 'Made into', align: 'left' },
          { heading: 'Length', align: 'right' },
          { heading: 'Width', align: 'right' },
          { heading: 'Wanted', align: 'right' },
          ...(spares ? [{ heading: 'Spare', align: 'right' } as const] : []),
        ],
        rows: numbered(file).map(({ number, blank, count }) => [
          `${number}`,
          blank.id,
          blank.strip === undefined
            ? 'flat piece'
            : `${blank.strip.outline}, ${printBareLength(blank.strip.depth, rule)} deep`,
          printBareLength(blank.length, rule),
          printBareLength(blank.width, rule),
          `${blank.quantity}`,
          ...(spares ? [`${count - blank.quantity}`] : []),
        ]),
      },
    ],
  };
}
