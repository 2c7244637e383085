import { writeSvg } from '../drawing/svg-sink.js';
import type { CutMap } from './cut-map.js';
import { layOut } from './lay-out.js';

export { CutMapError } from './check-map.js';
export type { CutMap } from './cut-map.js';

/**
 * Draws a cut map as a whole SVG document at true size, one user unit a millimetre, with the
 * stock's lower left corner at (0, 0). Text and margins are sized so that the page, printed to fit
 * A4 or Letter, is legible. The same map gives the same bytes.
 *
 * @throws {CutMapError} if something lies off the stock or the first-stage cuts are not parallel
 */
export function drawCutMap(map: CutMap): string {
  return writeSvg(layOut(map));
}
