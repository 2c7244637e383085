import svgpath from 'svgpath';
import type { Point } from '../outline.js';
import type { DrawnPath, Piece } from './drawn-path.js';
import { pieceOfArc } from './endpoint-arc.js';
import { MOST_PIECES } from './limits.js';
import { quote, SvgError, type SvgPlace } from './svg-error.js';

/**
 * The stretches that path data draws, in user units, one for each move that
 * something is drawn after.
 *
 * @throws SvgError `bad path data`, `too large`.
 */
export function readPathData(data: string, place: SvgPlace): readonly DrawnPath[] {
  refuseCrowds(data, place);
  const parsed = svgpath(data);
  const fault = 'err' in parsed ? String(parsed.err) : '';
  if (fault !== '') {
    throw refused(data, fault.replace(/^SvgPath: /, ''), place);
  }
  const paths: DrawnPath[] = [];
  let pieces: Piece[] = [];
  let here: Point = { x: 0, y: 0 };
  let start = here;
  let count = 0;

  const finish = (closed: boolean) => {
    if (pieces.length > 0) {
      paths.push({ pieces, closed });
    }
    pieces = [];
  };
  const draw = (piece: Piece | undefined) => {
    if (piece !== undefined) {
      pieces.push(piece);
      here = piece.to;
    }
  };

  parsed
    .abs()
    .unshort()
    .iterate((command) => {
      count += 1;
      if (count > MOST_PIECES) {
        throw crowded(place);
      }
      const odd = command.slice(1).find((number) => !Number.isFinite(number));
      if (odd !== undefined) {
        throw refused(data, `a number is ${odd}`, place);
      }
      const from = here;
      switch (command[0]) {
        case 'M':
          finish(false);
          here = { x: command[1], y: command[2] };
          start = here;
          return;
        case 'L':
          return draw({ kind: 'line', from, to: { x: command[1], y: command[2] } });
        case 'H':
          return draw({ kind: 'line', from, to: { x: command[1], y: from.y } });
        case 'V':
          return draw({ kind: 'line', from, to: { x: from.x, y: command[1] } });
        case 'Q': {
          const [, x1, y1, x, y] = command;
          return draw({ kind: 'quadratic', from, control: { x: x1, y: y1 }, to: { x, y } });
        }
        case 'C': {
          const [, x1, y1, x2, y2, x, y] = command;
          const [control1, control2] = [
            { x: x1, y: y1 },
            { x: x2, y: y2 },
          ];
          return draw({ kind: 'cubic', from, control1, control2, to: { x, y } });
        }
        case 'A': {
          const [, radiusX, radiusY, rotation, large, growing, x, y] = command;
          const to = { x, y };
          const flags = { large: large === 1, growing: growing === 1 };
          return draw(pieceOfArc({ from, to, radiusX, radiusY, rotation, ...flags }));
        }
        case 'z':
        case 'Z':
          if (here.x !== start.x || here.y !== start.y) {
            draw({ kind: 'line', from, to: start });
          }
          finish(true);
          here = start;
          return;
        default:
          throw refused(data, `there is a command ${quote(String(command[0]))}`, place);
      }
    });
  finish(false);
  return paths;
}

const NUMBERS_A_PIECE: Readonly<Record<string, number>> = {
  m: 2,
  l: 2,
  h: 1,
  v: 1,
  q: 4,
  t: 2,
  c: 6,
  s: 4,
  a: 7,
};

/**
 * Refuses path data with far too many pieces before it is parsed: the parser's
 * time grows with the square of the numbers after one letter. Counts every
 * number at least once and none more than three times.
 */
function refuseCrowds(data: string, place: SvgPlace): void {
  let perPiece = 1;
  let marks = 0;
  let before = 0;
  for (let index = 0; index < data.length; index++) {
    const character = data.charAt(index);
    const letter = NUMBERS_A_PIECE[character.toLowerCase()];
    const isDigit = character >= '0' && character <= '9';
    if (letter !== undefined) {
      perPiece = letter;
      marks = 0;
    } else if (character === '.' || (isDigit && before !== 1)) {
      marks += 1;
    }
    before = isDigit ? 1 : 0;
    if (marks > 3 * MOST_PIECES * perPiece) {
      throw crowded(place);
    }
  }
}

function crowded(place: SvgPlace): SvgError {
  const message = `The path has more than ${MOST_PIECES} pieces; simplify the drawing.`;
  return new SvgError('too large', message, place);
}

function refused(data: string, found: string, place: SvgPlace): SvgError {
  const message =
    `The path data cannot be read (${found}); it starts ${quote(data)}. Save the drawing again, ` +
    'or mend it in a text editor.';
  return new SvgError('bad path data', message, place);
}
