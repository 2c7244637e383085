import type { JobSheet, Section } from '../job-sheet/job-sheet.js';
import { seventeenInches } from '../template/seventeen-inches.test.support.js';
import { templatePages } from '../template/template-pages.js';

/** A sheet with every kind of block, as an order of a given name would have it. */
export function sampleSheet(name: string): JobSheet {
  const sections: readonly Section[] = [
    {
      id: 'buy',
      title: `What to buy for ${name}`,
      onNewPage: false,
      blocks: [
        { kind: 'words', text: `${name}: two sheets.` },
        { kind: 'caution', lines: ['Sheared edges cut:', 'wear gloves and eye protection.'] },
        {
          kind: 'table',
          caption: name,
          columns: [
            { heading: 'Sheet', align: 'left' },
            { heading: 'Count', align: 'right' },
          ],
          rows: [
            ...Array.from({ length: 120 }, (_, row) => [`${name} ${row}`, `${row}`]),
            ['Total', '7140'],
          ],
          sums: 1,
        },
        {
          kind: 'steps',
          steps: [
            { id: 'one', text: `Cut ${name}.`, detail: name },
            { id: 'two', text: 'Fold it.' },
          ],
        },
      ],
    },
    {
      id: 'template-1',
      title: name,
      onNewPage: true,
      blocks: [
        ...templatePages({ ...seventeenInches(), name }).map((drawing) => {
          return { kind: 'picture', drawing, trueScale: true } as const;
        }),
        {
          kind: 'picture',
          trueScale: false,
          caption: `Hatched, for ${name}`,
          drawing: {
            title: name,
            description: name,
            page: { x: -10, y: -20, width: 400, height: 100 },
            hatches: [
              {
                id: 'keep',
                spacing: 4,
                strokeWidth: 0.4,
                stroke: '#333333',
                ground: '#eeeeee',
                crossed: true,
              },
            ],
            layers: [
              {
                name: 'all',
                marks: [
                  {
                    kind: 'rect',
                    box: { x: 0, y: -10, width: 100, height: 40 },
                    fill: 'url(#keep)',
                    stroke: '#000000',
                    dashes: [3],
                    rounding: 2,
                  },
                  {
                    kind: 'text',
                    role: 'name',
                    text: name,
                    at: { x: 200, y: 40 },
                    anchor: 'end',
                    size: 6,
                    bold: true,
                    upright: true,
                    colour: '#000000',
                    box: { x: 194, y: -15, width: 8, height: 55 },
                    room: { x: 194, y: -15, width: 8, height: 55 },
                  },
                ],
              },
            ],
          },
        },
      ],
    },
  ];
  return { title: name, summary: [`${name}, for the bakery`], key: 'key', sections };
}
