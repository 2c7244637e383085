import { type Block, paragraph } from '../drawing/block.js';
import { LINE_HEIGHT, shorten, textWidth, wrap } from '../drawing/measure-text.js';
import { words } from '../strip-drawing/tag.js';
import { PAGE, TYPE } from './page-format.js';

/** How much wider letters are when bold. */
const BOLD = textWidth('x', true) / textWidth('x');
const LINE = LINE_HEIGHT * TYPE.title;

/** Whose template a page is, in at most two lines, and which page of it. */
export function drawHeading(name: string, count: string, left: number): Block {
  const width = PAGE.width - left;
  const room = width / TYPE.title;
  const [first = '', ...rest] = wrap(name, room / BOLD);
  const second = shorten(rest.join(' '), room, true);
  const lines = second === '' ? [first] : [first, second];
  const title = lines.map((line, index) =>
    words('title', line, { x: left, y: index * LINE }, TYPE.title, { bold: true }),
  );
  const top = lines.length * LINE;
  const text = `${count}. True size: print at 100 %.`;
  const below = paragraph({ left, top, width, unit: 1 }, 'page', text, TYPE.body);
  return { marks: [...title, ...below.marks], height: top + below.height };
}
