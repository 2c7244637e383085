import { planDigest } from '../booking/plan-digest.js';
import { counted } from '../report/counted.js';
import { type JobSheet, type Planned, type Section, TRUE_PAGE } from './job-sheet.js';
import { bend } from './sections/bend.js';
import { buy } from './sections/buy.js';
import { fetch } from './sections/fetch.js';
import { join } from './sections/join.js';
import { lookOver } from './sections/look-over.js';
import { markAndNotch } from './sections/mark-and-notch.js';
import { putBack } from './sections/put-back.js';
import { shear } from './sections/shear.js';
import { stripList } from './sections/strip-list.js';
import { wash } from './sections/wash.js';

/** Sections that are made elsewhere, by the work they belong to. */
export interface Parts {
  /** In place of the plain cut maps. */
  readonly shear?: readonly Section[];
  /** After the list of strips to mark, such as templates at true scale. */
  readonly mark?: readonly Section[];
  /** Before all work, such as what to charge. */
  readonly charge?: readonly Section[];
}

/**
 * The packet of a plan, its sections in the order of the work.
 * @throws Error where two sections or steps have one id, or a picture at true scale is larger than TRUE_PAGE
 */
export function jobSheet(planned: Planned, parts: Parts = {}): JobSheet {
  const { file } = planned;
  const stretches: readonly (readonly [work: string, sections: readonly Section[]])[] = [
    ['Look over', [lookOver(planned), stripList(planned)]],
    ['Charge', parts.charge ?? []],
    ['Buy', [buy(planned)]],
    ['Fetch', [fetch(planned)]],
    ['Shear', parts.shear ?? shear(planned)],
    ['Mark and notch', [...markAndNotch(planned), ...(parts.mark ?? [])]],
    ['Bend', bend(planned)],
    ['Join', join(planned)],
    ['Wash', [wash(planned)]],
    ['Put back', [putBack(planned)]],
  ];
  const sheet = {
    title: file.order.name,
    summary: summary(planned),
    key: planDigest(file),
    sections: stretches.flatMap(([work, sections]) =>
      sections.map((section) => ({ ...section, work })),
    ),
  };
  checkJobSheet(sheet);
  return sheet;
}

function summary({ file }: Planned): readonly string[] {
  const pieces = file.blanks.reduce((sum, { quantity }) => sum + quantity, 0);
  const sheets = file.buy.reduce((sum, { count }) => sum + count, 0);
  return [
    `${counted(pieces, 'piece')} of ${counted(file.blanks.length, 'kind')}`,
    sheets === 0 ? 'Nothing to buy' : `${counted(sheets, 'sheet')} to buy`,
    counted(file.layouts.length, 'layout'),
  ];
}

/** What a packet must be so that its files can be written: a fault here is one of the program. */
export function checkJobSheet({ sections }: JobSheet): void {
  const blocks = sections.flatMap((section) => section.blocks);
  const steps = blocks.flatMap((block) => (block.kind === 'steps' ? block.steps : []));
  checkIds(
    sections.map(({ id }) => id),
    'section',
  );
  checkIds(
    steps.map(({ id }) => id),
    'step',
  );
  for (const block of blocks) {
    if (block.kind !== 'picture' || !block.trueScale) continue;
    const { title, page } = block.drawing;
    if (page.width > TRUE_PAGE.width || page.height > TRUE_PAGE.height) {
      throw new Error(
        `The picture "${title}" measures ${page.width} x ${page.height} mm, more than ` +
          `${TRUE_PAGE.width} x ${TRUE_PAGE.height} mm: it would not print at true scale.`,
      );
    }
  }
}

function checkIds(ids: readonly string[], what: string): void {
  const seen = new Set<string>();
  for (const id of ids) {
    if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(id)) {
      throw new Error(`The id "${id}" of a ${what} is unfit for an address.`);
    }
    if (seen.has(id)) throw new Error(`Two ${what}s of the packet have the id "${id}".`);
    seen.add(id);
  }
}
