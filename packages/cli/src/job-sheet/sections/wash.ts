import type { Planned, Section } from '../job-sheet.js';
import { numbered } from './figures.js';

/** Counting and washing what was made. What to do is common practice. */
export function wash({ file }: Planned): Section {
  const rows = numbered(file)
    .filter(({ blank }) => (blank.strip?.part?.number ?? 1) === 1)
    .map(({ number, blank, count }) => [`${number}`, blank.id, `${count}`]);
  return {
    id: 'wash',
    title: 'Look over, count and wash',
    onNewPage: false,
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: 'No', align: 'right' },
          { heading: 'Name', align: 'left' },
          { heading: 'Count', align: 'right' },
        ],
        rows,
      },
      {
        kind: 'steps',
        steps: [
          {
            id: 'wash-edges',
            text: 'Feel for burrs with a rag and take them off',
            detail: 'A rag that catches shows a burr. Never use a bare finger.',
          },
          { id: 'wash-count', text: 'Count them' },
          {
            id: 'wash-wash',
            text: 'Wash, rinse and dry at once',
            detail: 'Flux and oil off before food comes near; tinplate that stays wet rusts.',
          },
        ],
      },
    ],
  };
}
