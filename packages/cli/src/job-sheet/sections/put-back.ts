import { printSize } from '../../length/print-length.js';
import type { PlanFile } from '../../plan-file/plan-file.js';
import type { Block, Planned, Section, Step } from '../job-sheet.js';
import { HANDLING } from './cautions.js';
import { priceText, ruleOf } from './figures.js';

/** The offcuts to put on the rack, and how to tell the rack of them. */
export function putBack({ file }: Planned): Section {
  return {
    id: 'put-back',
    title: 'Put back, and book',
    onNewPage: false,
    blocks: [...kept(file), { kind: 'steps', steps: [...putSteps(file), bookStep(file)] }],
  };
}

const keptOf = (file: PlanFile) =>
  file.layouts.flatMap(({ count, remnants }, index) =>
    remnants.filter(({ keep }) => keep).map((remnant) => ({ ...remnant, count, map: index + 1 })),
  );

function kept(file: PlanFile): readonly Block[] {
  const all = keptOf(file);
  if (all.length === 0) {
    return [{ kind: 'words', text: 'No offcut is worth keeping: what is left over is scrap.' }];
  }
  const priced = all.some(({ value }) => value > 0);
  return [
    HANDLING,
    {
      kind: 'table',
      caption: 'Offcuts to keep; all else is scrap',
      columns: [
        { heading: 'Count', align: 'right' },
        { heading: 'Size', align: 'left' },
        { heading: 'From', align: 'left' },
        ...(priced ? [{ heading: 'Worth each', align: 'right' } as const] : []),
        { heading: 'Mark', align: 'left' },
      ],
      rows: all.map(({ count, length, width, map, value }) => [
        `${count}`,
        printSize(Math.max(length, width), Math.min(length, width), ruleOf(file)),
        `layout ${map}`,
        ...(priced ? [priceText(value, file)] : []),
        '',
      ]),
    },
  ];
}

function putSteps(file: PlanFile): readonly Step[] {
  const count = keptOf(file).reduce((sum, entry) => sum + entry.count, 0);
  const [first] = file.layouts;
  return [
    ...(count === 0
      ? []
      : [
          {
            id: 'put-back-rack',
            text:
              count === 1 ? 'Put the offcut on the rack' : `Put the ${count} offcuts on the rack`,
          },
        ]),
    ...(first === undefined
      ? []
      : [{ id: 'put-back-scrap', text: 'Put the scrap where no hand reaches into it' }]),
  ];
}

function bookStep(file: PlanFile): Step {
  const marks = keptOf(file).length > 0;
  return {
    id: 'put-back-book',
    text: 'Book it: stripwright book plan.json',
    detail: marks
      ? 'It tells the mark to write on each offcut, with a paint marker, and takes what was cut off the rack.'
      : 'It takes what was cut off the rack.',
  };
}
