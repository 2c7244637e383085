import type { Complaint } from '../faults/fault.js';
import { editDistance } from '../faults/nearest-spelling.js';
import { readOffcutMark } from './offcut-mark.js';

/** Signs that a mark may differ by and still be taken for what was meant. */
const FARTHEST = 2;
const MOST = 3;
const LETTERS_AND_FIGURES = /^[A-Z0-9]{3,}$/i;

/** What is wrong with a mark that is not on the rack, with those there that it may have been. */
export function notOnTheRack(text: string, marks: readonly string[]): Complaint {
  const written = text.trim();
  const nearest = nearestMarks(written, marks);
  if (readOffcutMark(written) !== undefined)
    return { code: 'not a mark', wrong: 'absent', nearest };
  const wrong = LETTERS_AND_FIGURES.test(written) ? 'check' : 'sign';
  return { code: 'not a mark', wrong, nearest };
}

/** Up to three, the nearest first. */
function nearestMarks(text: string, marks: readonly string[]): readonly string[] {
  const written = text.toUpperCase();
  return marks
    .map((mark) => ({ mark, distance: editDistance(written, mark) }))
    .filter(({ mark, distance }) => distance <= Math.min(FARTHEST, mark.length - 2))
    .sort((one, other) => one.distance - other.distance || (one.mark < other.mark ? -1 : 1))
    .slice(0, MOST)
    .map(({ mark }) => mark);
}
