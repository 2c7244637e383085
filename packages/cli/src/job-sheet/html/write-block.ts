import type { Block, Picture, Step } from '../job-sheet.js';
import { type Content, element, type Html } from './element.js';
import { embedDrawing } from './embed-drawing.js';
import { fillsPage, paperSize } from './paper-size.js';
import { writeTable } from './write-table.js';

/** Where a block stands. */
export interface Place {
  /** Unique on the page, for what needs an id. */
  readonly id: string;
  /** The title of its section. */
  readonly title: string;
}

/** One block of a section. */
export function writeBlock(block: Block, place: Place): Html {
  switch (block.kind) {
    case 'words':
      return element('p', {}, block.text);
    case 'caution':
      return element(
        'div',
        { class: 'caution', role: 'note' },
        element('p', { class: 'caution-word' }, 'Caution'),
        ...block.lines.map((line) => element('p', {}, line)),
      );
    case 'table':
      return writeTable(block);
    case 'steps':
      return element('ol', { class: 'steps', role: 'list' }, block.steps.map(writeStep));
    case 'picture':
      return writePicture(block, place);
  }
}

function writeStep({ id, text, detail }: Step): Html {
  return element(
    'li',
    {},
    element(
      'label',
      {},
      element('input', { type: 'checkbox', id: `step.${id}`, value: id, autocomplete: 'off' }),
      element(
        'span',
        { class: 'say' },
        element('span', { class: 'do' }, text),
        detail === undefined || detail === '' ? [] : element('span', { class: 'detail' }, detail),
      ),
    ),
  );
}

function writePicture(picture: Picture, { id, title }: Place): Html {
  const { caption, trueScale, drawing } = picture;
  const whole = fillsPage(picture);
  const classes = [trueScale ? 'true-scale' : 'to-fit', ...(whole ? ['whole-page'] : [])];
  const words: Content[] = [
    ...(caption === undefined ? [] : [element('p', {}, caption)]),
    ...(trueScale ? [element('p', { class: 'true-words' }, TRUE_WORDS)] : []),
  ];
  return element(
    'figure',
    { class: classes.join(' ') },
    whole
      ? element('p', { class: 'over' }, caption === undefined ? title : `${title}: ${caption}`)
      : [],
    embedDrawing(drawing, id, paperSize(picture)),
    words.length === 0 ? [] : element('figcaption', {}, ...words),
  );
}

const TRUE_WORDS =
  'True size on paper: print at 100 %, not fitted to the page, and measure the check square first.';
