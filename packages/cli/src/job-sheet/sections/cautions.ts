import { CUTTING_CAUTIONS, HANDLING_CAUTION } from '../../report/cautions.js';
import type { Caution } from '../job-sheet.js';

/** All that goes with cutting, a sentence a line. */
export const CUTTING: Caution = {
  kind: 'caution',
  lines: CUTTING_CAUTIONS.join(' ').split(/(?<=\.) /),
};

/** What goes with every piece that is taken in hand. */
export const HANDLING: Caution = { kind: 'caution', lines: [HANDLING_CAUTION] };
