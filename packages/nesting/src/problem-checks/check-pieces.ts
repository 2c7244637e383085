import type { Piece } from '../problem.js';
import { ProblemError } from '../problem-error.js';
import { checkMetal } from './check-metal.js';
import { checkChoice, checkWhole, checkWholeIfAny } from './check-value.js';
import { LONGEST, MOST, MOST_TOGETHER } from './limits.js';

/** @throws ProblemError for the first piece that makes no sense, or where they are too many */
export function checkPieces(pieces: readonly Piece[]): void {
  let wanted = 0;
  let together = 0;
  pieces.forEach((piece, i) => {
    const path = `pieces[${i}]`;
    checkWhole(piece.length, 1, LONGEST, `${path}.length`);
    checkWhole(piece.width, 1, LONGEST, `${path}.width`);
    checkWholeIfAny(piece.spares, 0, MOST, `${path}.spares`);
    const spares = piece.spares ?? 0;
    checkWhole(piece.quantity, spares > 0 ? 0 : 1, MOST, `${path}.quantity`);
    checkChoice(piece.mayTurn, [true, false], `${path}.mayTurn`);
    if (piece.rolling !== undefined) {
      checkChoice(piece.rolling, ['along', 'across'], `${path}.rolling`);
    }
    checkMetal(piece, path);
    wanted += piece.quantity;
    together += piece.quantity + spares;
  });
  if (wanted === 0) {
    const message =
      'are spares only; at least one must be wanted, since spares never cost anything';
    throw new ProblemError('nothing wanted', 'pieces', message, wanted);
  }
  if (together > MOST_TOGETHER) {
    const message = `must be at most ${MOST_TOGETHER} together, with spares; got ${together}`;
    throw new ProblemError('too many to compute', 'pieces', message, together);
  }
}
