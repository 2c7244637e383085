import { type Area, type Block, paragraph, stack } from '../drawing/block.js';
import { textWidth } from '../drawing/measure-text.js';
import { TYPE } from './paper.js';

const GUTTER = 4;
const MOST_COLUMNS = 4;

/** Short lines in columns side by side, as many as they leave room for. */
export function inColumns(lines: readonly string[], role: string, area: Area): Block {
  const longest = Math.max(...lines.map((line) => textWidth(line))) * TYPE.small * area.unit;
  const gutter = GUTTER * area.unit;
  const room = Math.floor((area.width + gutter) / (longest + gutter));
  const columns = Math.max(1, Math.min(MOST_COLUMNS, room));
  const width = (area.width + gutter) / columns - gutter;
  const length = Math.ceil(lines.length / columns);
  const drawn = Array.from({ length: columns }, (_, index) => {
    const left = area.left + index * (width + gutter);
    const column = lines.slice(index * length, (index + 1) * length);
    return stack(
      { ...area, left, width },
      0,
      column.map((text) => (place: Area) => paragraph(place, role, text, TYPE.small)),
    );
  });
  return {
    marks: drawn.flatMap(({ marks }) => marks),
    height: Math.max(...drawn.map(({ height }) => height)),
  };
}
