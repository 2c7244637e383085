import { layOut } from '../cut-map/lay-out.js';
import type { Block, Planned, Section, Step, Table } from '../job-sheet/job-sheet.js';
import type { Rule } from '../length/print-length.js';
import { cutMaps } from '../packet/cut-maps.js';
import type { PlanFile, PlanFileLayout } from '../plan-file/plan-file.js';
import { planOnFile } from '../plan-file/plan-on-file.js';
import { CUTTING_CAUTIONS } from '../report/cautions.js';
import { counted } from '../report/counted.js';
import { type CuttingList, cuttingLists } from './cutting-list.js';
import { type ListWords, listWords, pileWords, spanWords } from './list-words.js';

/** A section for each layout: its map, then what to do at the shear, and what must lie on the piles. */
export function cuttingListSections({ file }: Pick<Planned, 'file'>): readonly Section[] {
  const onFile = planOnFile(file);
  const maps = cutMaps(file);
  return cuttingLists(onFile).flatMap((list, index): Section[] => {
    const layout = file.layouts[index];
    const map = maps[index];
    if (layout === undefined || map === undefined) return [];
    const rule: Rule = { units: file.order.units, mark: file.order.smallestMark };
    const words = listWords(rule, layout.stock.kind);
    const drawing = layOut(map);
    const cutting: readonly Block[] =
      layout.cuts.length === 0
        ? [{ kind: 'words', text: `Nothing to cut: the ${layout.stock.kind} is the piece.` }]
        : [
            { kind: 'words', text: howToRead(list, layout) },
            cutsTable(list, words),
            { kind: 'steps', steps: steps(list, layout, words) },
          ];
    return [
      {
        id: `layout-${index + 1}`,
        title: titleOf(list, layout, file),
        onNewPage: true,
        blocks: [
          { kind: 'picture', drawing, trueScale: false, caption: drawing.title },
          { kind: 'caution', lines: CUTTING_CAUTIONS },
          ...cutting,
          pilesTable(layout, file),
        ],
      },
    ];
  });
}

function titleOf({ layout }: CuttingList, { count, stock }: PlanFileLayout, file: PlanFile) {
  return `Layout ${layout} of ${file.layouts.length}: cut ${count} of ${stock.id} like this`;
}

function howToRead({ settings }: CuttingList, { cuts, stock, count }: PlanFileLayout): string {
  const each = count > 1 ? ` for each of the ${count} ${stock.kind}s` : '';
  return (
    `${counted(cuts.length, 'cut')} with ${counted(settings.length, 'setting')} of the gauge${each}. ` +
    'Lay the edge that is named, as it lies on the map, against the back gauge. ' +
    'What lies between the blade and the gauge falls off.'
  );
}

function cutsTable({ settings }: CuttingList, words: ListWords): Table {
  return {
    kind: 'table',
    caption: 'Cuts in their order, numbered as on the map',
    columns: [
      { heading: 'Cut', align: 'right' },
      { heading: 'Gauge', align: 'left' },
      { heading: 'Times', align: 'right' },
      { heading: 'Take, edge to the gauge', align: 'left' },
      { heading: 'Falls off', align: 'left' },
      { heading: 'Left in the hand', align: 'left' },
    ],
    rows: settings.flatMap(({ gauge, lines }) =>
      lines.map((line, index) => [
        words.cuts(line),
        `${index === 0 ? 'set' : 'stays'} ${words.gauge(gauge)}`,
        words.times(line),
        words.takes(line),
        words.falls(line),
        words.rest(line),
      ]),
    ),
  };
}

function steps(
  { layout, settings }: CuttingList,
  { count, stock }: PlanFileLayout,
  words: ListWords,
): readonly Step[] {
  const id = (step: string) => `layout-${layout}-${step}`;
  const made = settings.map(({ gauge, lines }, index): Step => {
    const from = lines[0]?.cuts.from ?? 0;
    const to = lines.at(-1)?.cuts.to ?? 0;
    const cuts = `${from === to ? 'cut' : 'cuts'} ${spanWords({ from, to })}`;
    return {
      id: id(`gauge-${index + 1}`),
      text: `Set the gauge to ${words.gauge(gauge)}: ${cuts}`,
      detail: lines.map((line) => `${words.times(line)} × ${words.takes(line)}`).join('; '),
    };
  });
  if (count === 1) return made;
  return [
    ...made,
    { id: id('all'), text: `Do the same with the others, until ${count} ${stock.kind}s are cut` },
  ];
}

/** What must lie where in the end. */
function pilesTable({ pieces, count }: PlanFileLayout, { blanks }: PlanFile): Table {
  const rows = blanks.flatMap(({ id }, index) => {
    const many = pieces.filter(({ blank }) => blank === id).length;
    return many === 0 ? [] : [[pileWords(index + 1), id, `${many}`, `${many * count}`]];
  });
  const all = pieces.length;
  return {
    kind: 'table',
    caption: 'Count the piles',
    columns: [
      { heading: 'Pile', align: 'left' },
      { heading: 'Blank', align: 'left' },
      { heading: 'From one', align: 'right' },
      { heading: `From all ${count}`, align: 'right' },
    ],
    rows: [...rows, ['', 'All', `${all}`, `${all * count}`]],
    sums: 1,
  };
}
