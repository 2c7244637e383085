import { oneLine } from '../../drawing/measure-text.js';
import { seamText } from '../../report/edge-and-seam-text.js';
import type { Planned, Section } from '../job-sheet.js';
import { CUTTING } from './cautions.js';
import { numbered, ruleOf } from './figures.js';

/** The seam of each cutter. None for flat pieces alone. */
export function join({ file }: Planned): readonly Section[] {
  const steps = numbered(file).flatMap(({ number, blank, count }) =>
    blank.strip === undefined
      ? []
      : [
          {
            id: `join-${number}`,
            text: `Join ${count} of strip ${number}, ${oneLine(blank.id)}`,
            detail: seamText(blank.strip, ruleOf(file)),
          },
        ],
  );
  if (steps.length === 0) return [];
  return [
    {
      id: 'join',
      title: 'Join the ends',
      onNewPage: false,
      blocks: [CUTTING, { kind: 'steps', steps }],
    },
  ];
}
