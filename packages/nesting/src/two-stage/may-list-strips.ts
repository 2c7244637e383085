import type { Box } from '../pattern/box.js';
import { sheetsByArea } from '../pattern/sheets-by-area.js';

/** Steps of knapsacks, for one pass over strips of every width, up to which they are listed. */
const MOST_STEPS = 150_000_000;
/** Strips are listed for orders that may take no more sheets than these. */
const MOST_SHEETS = 30;

/** Whether strips of every width are few enough to list, and the order takes but a few sheets. */
export function mayListStrips(boxes: readonly Box[], demand: readonly number[]): boolean {
  return everyWidthSteps(boxes) <= MOST_STEPS && sheetsByArea(boxes, demand) <= MOST_SHEETS;
}

/** Steps of knapsacks that one pass over strips of every width takes. */
export function everyWidthSteps(boxes: readonly Box[]): number {
  return boxes.reduce(
    (sum, box) => sum + box.length * box.width * box.lays.length * box.firstCuts.length,
    0,
  );
}
