import { printLength, printThickness } from '../../length/print-length.js';
import type { PlanFile } from '../../plan-file/plan-file.js';
import { counted } from '../../report/counted.js';
import { boundText, shareUsed } from '../../report/plan-report.js';
import { warningTexts } from '../../report/warning-lines.js';
import type { Block, Planned, Section } from '../job-sheet.js';
import { CUTTING } from './cautions.js';
import { numberAndName, numbered, priceText, ruleOf } from './figures.js';

/** The order at a glance, and what to think of before metal is cut. */
export function lookOver({ file }: Planned): Section {
  return {
    id: 'look-over',
    title: 'The order at a glance',
    onNewPage: false,
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: 'What', align: 'left' },
          { heading: 'How much', align: 'left' },
        ],
        rows: glance(file),
      },
      CUTTING,
      ...foodWarning(file),
      ...doubts(file),
      {
        kind: 'steps',
        steps: [
          {
            id: 'look-over-order',
            text: 'Hold names, sizes and quantities against the order',
            detail:
              'The list of strips follows. Change the order and plan again rather than by hand.',
          },
          ...thicknessStep(file),
        ],
      },
    ],
  };
}

function glance(file: PlanFile): readonly (readonly string[])[] {
  const cutters = file.blanks.filter(({ strip }) => (strip?.part?.number ?? 1) === 1);
  const bent = cutters.filter(({ strip }) => strip !== undefined);
  const flat = cutters.filter(({ strip }) => strip === undefined);
  const stocks = file.layouts.reduce((sum, { count }) => sum + count, 0);
  const bought = file.buy.reduce((sum, { count }) => sum + count, 0);
  return [
    ...(bent.length === 0 ? [] : [['Cutters', ofKinds(bent)]]),
    ...(flat.length === 0 ? [] : [['Flat pieces', ofKinds(flat)]]),
    ['Metal', metalText(file)],
    [
      'Sheets to buy',
      bought === 0 ? 'none' : `${bought}, for ${priceText(file.parts.bought, file)}`,
    ],
    [
      'To shear',
      `${counted(stocks, 'sheet or offcut', 'sheets and offcuts')}, in ${counted(file.layouts.length, 'layout')}`,
    ],
    ['Metal used', `${(100 * shareUsed(file)).toFixed(1)} %`],
    ['Finest mark', printLength(file.order.smallestMark, ruleOf(file))],
    ['Cost', `${priceText(file.cost, file)}; ${boundText(file)}`],
  ];
}

const ofKinds = (blanks: PlanFile['blanks']): string =>
  `${blanks.reduce((sum, { quantity }) => sum + quantity, 0)} of ${counted(blanks.length, 'kind')}`;

function metalText({ order }: PlanFile): string {
  const { metal, units } = order;
  if (metal === undefined) return 'as the order says';
  if (metal.thickness === undefined) return metal.name;
  return `${metal.name}, ${printThickness(metal.thickness, units)} thick`;
}

function foodWarning({ order }: PlanFile): readonly Block[] {
  const warning = order.metal?.foodWarning;
  return warning === undefined ? [] : [{ kind: 'caution', lines: [warning] }];
}

/** What is hard to make, with the strip it is about. */
function doubts(file: PlanFile): readonly Block[] {
  const rows = numbered(file).flatMap((entry) =>
    warningTexts(entry.blank.strip?.warnings ?? [], ruleOf(file)).map((said) => [
      numberAndName(entry),
      said,
    ]),
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Before cutting, think of this',
      columns: [
        { heading: 'Strip', align: 'left' },
        { heading: 'What is found', align: 'left' },
      ],
      rows,
    },
  ];
}

function thicknessStep({ order }: PlanFile) {
  const thickness = order.metal?.thickness;
  if (thickness === undefined) return [];
  const text = `Measure a sheet: ${printThickness(thickness, order.units)} thick`;
  return [{ id: 'look-over-thickness', text, detail: 'The strips were sized for it.' }];
}
