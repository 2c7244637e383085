import { oneLine } from '../../drawing/measure-text.js';
import { printSize } from '../../length/print-length.js';
import type { PlanFile } from '../../plan-file/plan-file.js';
import { timesUsed } from '../../report/plan-report.js';
import { takenFromRack } from '../../report/rack-report.js';
import type { Block, Planned, Section } from '../job-sheet.js';
import { HANDLING } from './cautions.js';
import { ruleOf } from './figures.js';

/** One thing to fetch before cutting. */
interface Fetched {
  readonly count: number;
  readonly what: string;
  readonly size: string;
  readonly place: string;
}

/** What to take from the rack and from the shop, and where it lies. */
export function fetch({ file }: Planned): Section {
  return {
    id: 'fetch',
    title: 'Fetch from the rack and the shop',
    onNewPage: false,
    blocks: blocks([...fromRack(file), ...fromShop(file)]),
  };
}

function blocks(things: readonly Fetched[]): readonly Block[] {
  if (things.length === 0) {
    return [{ kind: 'words', text: 'Nothing: all is cut from sheets that are bought.' }];
  }
  return [
    HANDLING,
    {
      kind: 'table',
      columns: [
        { heading: 'Count', align: 'right' },
        { heading: 'What', align: 'left' },
        { heading: 'Size', align: 'left' },
        { heading: 'Where it lies', align: 'left' },
      ],
      rows: things.map(({ count, what, size, place }) => [`${count}`, what, size, place]),
    },
    {
      kind: 'steps',
      steps: things.map(({ count, what, size, place }, index) => ({
        id: `fetch-${index + 1}`,
        text: `Fetch ${count} of ${oneLine(what)}`,
        detail: [size, oneLine(place)].filter((words) => words !== '').join(', '),
      })),
    },
  ];
}

function fromRack(file: PlanFile): readonly Fetched[] {
  return takenFromRack(file).map(({ stock, mark, count }) => ({
    count,
    what: `rack ${mark}`,
    size: sizeText(stock, file),
    place: stock.place ?? '',
  }));
}

/** What the order says that the shop has, beside the rack. */
function fromShop(file: PlanFile): readonly Fetched[] {
  return file.stock.flatMap((stock) => {
    if (stock.mark !== undefined) return [];
    const used = timesUsed(file, stock.id);
    const count = stock.kind === 'offcut' ? used : Math.min(used, stock.onHand);
    const what = stock.kind === 'offcut' ? `offcut ${stock.id}` : stock.id;
    return count === 0 ? [] : [{ count, what, size: sizeText(stock, file), place: '' }];
  });
}

const sizeText = (
  { length, width }: { readonly length: number; readonly width: number },
  file: PlanFile,
) => printSize(Math.max(length, width), Math.min(length, width), ruleOf(file));
