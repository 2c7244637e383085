import { LINE_HEIGHT } from '../drawing/measure-text.js';
import { TRUE_PAGE } from '../job-sheet/job-sheet.js';
import { TAG_HEIGHT } from '../strip-drawing/tag.js';

/** Millimetres of page. A template is true to scale, so they are millimetres of metal as well. */
export const PAGE = TRUE_PAGE;

/** Font sizes. */
export const TYPE = { title: 4.6, body: 2.8, small: 2.4 } as const;

/** Where the strip begins: below the words about its square end, or the overlap of a join. */
export const STRIP_TOP = 6.5;
/** Room left of the strip for the name of its cutting edge. */
export const STRIP_LEFT = 5;
/** How far the strip is drawn on past a join. */
export const OVERLAP = 6;
/** From the strip to the labels beside it. */
export const TIE = 3.5;
export const GAP = 4;

/** The most of a strip, along it, to a join or to its end. */
export const TO_END = PAGE.height - STRIP_TOP - 1;
export const TO_JOIN = PAGE.height - STRIP_TOP - OVERLAP;

/** From one label beside the strip to the next. */
export const PITCH = Math.max(TAG_HEIGHT, LINE_HEIGHT * TYPE.body) + 0.3;
export const LABEL_TOP = STRIP_TOP - 0.8;
export const MOST_LABELS = Math.floor((PAGE.height - LABEL_TOP) / PITCH);

/** The check square and the check bar: 50 mm and 2 in. */
export const CHECK_SQUARE = 50;
export const CHECK_BAR = 2 * 25.4;
