/**
 * The map is drawn at its true size, and read on paper. A4 (210 x 297 mm, ISO 216) and Letter
 * (8 1/2 x 11 in) both leave this much inside margins of 10 mm; text and gaps are set in
 * millimetres of this paper and drawn `unit` times as large.
 */
export const PAPER = { width: 190, height: 259 } as const;

/** Millimetres of drawing for a millimetre of paper. */
export type Unit = number;

/** Font sizes in millimetres of paper. The least is 6 point (1 point = 1/72 in). */
export const TYPE = { title: 5.2, lead: 4.4, body: 3, small: 2.6, least: 2.12 } as const;

/** From what is easiest to read to the least that a piece's label may shrink to. */
export const LABEL_SIZES = [TYPE.body, 2.7, 2.4, TYPE.least] as const;

/** Clear paper around everything, so that no line sits on the edge of the page. */
export const MARGIN = 2.5;

/** Room kept free for the sheet when the rest of the page is crowded. */
const LEAST_SHEET = 60;

/**
 * The unit that makes a page fit the paper.
 *
 * @param stock extents in millimetres
 * @param taken paper beside and above or below the sheet that other things need, in millimetres
 */
export function fitPaper(
  stock: { readonly length: number; readonly width: number },
  taken: { readonly across: number; readonly down: number },
): Unit {
  return Math.max(
    stock.length / Math.max(LEAST_SHEET, PAPER.width - taken.across),
    stock.width / Math.max(LEAST_SHEET, PAPER.height - taken.down),
  );
}
