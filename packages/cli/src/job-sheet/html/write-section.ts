import type { Section } from '../job-sheet.js';
import { element, type Html } from './element.js';
import { staysTogether } from './page-height.js';
import { fillsPage } from './paper-size.js';
import { writeBlock } from './write-block.js';

export const titleId = ({ id }: Section): string => `title.${id}`;

/** @param stretch the number of its stretch of work, where it has one */
export function writeSection(section: Section, stretch: number | undefined): Html {
  const { id, title, work, onNewPage, blocks } = section;
  const [first] = blocks;
  // Such a picture leaves no room for a heading; it prints with a line of its own.
  const isBare = first?.kind === 'picture' && fillsPage(first);
  const classes = [
    ...(onNewPage ? ['new-page'] : []),
    ...(isBare ? ['bare'] : []),
    ...(staysTogether(section) ? ['together'] : []),
  ];
  return element(
    'section',
    {
      id,
      class: classes.length === 0 ? undefined : classes.join(' '),
      'aria-labelledby': titleId(section),
    },
    element(
      'div',
      { class: 'head' },
      work === undefined || stretch === undefined
        ? []
        : element('p', { class: 'work' }, element('b', {}, `${stretch}`), ` ${work}`),
      element('h2', { id: titleId(section) }, title),
    ),
    blocks.map((block, index) => writeBlock(block, { id: `${id}.${index + 1}`, title })),
  );
}
