import type { Section } from '../job-sheet.js';
import { element, type Html } from './element.js';

/** Sections that belong to one stretch of work. */
export interface Stretch {
  /** Absent for sections that belong to none. */
  readonly work?: string;
  readonly sections: readonly Section[];
}

/** The sections by the work they belong to, in their order. */
export function stretches(sections: readonly Section[]): readonly Stretch[] {
  const found: { work?: string; sections: Section[] }[] = [];
  for (const section of sections) {
    const last = found.at(-1);
    if (last !== undefined && section.work !== undefined && last.work === section.work) {
      last.sections.push(section);
    } else {
      const work = section.work === undefined ? {} : { work: section.work };
      found.push({ ...work, sections: [section] });
    }
  }
  return found;
}

/** The table of contents: every section, under the work it belongs to. */
export function contents(all: readonly Stretch[]): Html {
  return element(
    'nav',
    { 'aria-labelledby': CONTENTS_ID },
    element('h2', { id: CONTENTS_ID }, 'Contents'),
    element('p', { id: DONE_ID, role: 'status', hidden: true }),
    element('ol', { class: 'contents', role: 'list' }, all.map(entry)),
  );
}

export const CONTENTS_ID = 'sheet.contents';
/** Where the ticks are counted. */
export const DONE_ID = 'sheet.done';

/** More sections of one stretch are folded away, so that the contents stay at a glance. */
const UNFOLDED = 4;

function entry({ work, sections }: Stretch): Html {
  const [first, ...others] = sections;
  if (first === undefined || work === undefined || others.length === 0) {
    return element(
      'li',
      {},
      sections.map((section) => link(section, work ?? section.title)),
    );
  }
  const list = element(
    'ol',
    { role: 'list' },
    sections.map((section) => element('li', {}, link(section, section.title))),
  );
  const folded = element(
    'details',
    {},
    element('summary', {}, `${sections.length} sections`),
    list,
  );
  return element('li', {}, link(first, work), sections.length > UNFOLDED ? folded : list);
}

const link = ({ id }: Section, words: string): Html => element('a', { href: `#${id}` }, words);
