import { printLength, printSize, type Rule } from '../length/print-length.js';
import type { Line, Metal, Outcome } from './cutting-list.js';

/** The cutting list in the words of the bench. */
export interface ListWords {
  /** `1` or `1 to 5` */
  cuts(line: Line): string;
  gauge(millimetres: number): string;
  /** `3`, or `3 each` where several are cut. */
  times(line: Line): string;
  /** `the sheet, lower edge`; `strips A, B, left edge` */
  takes(line: Line): string;
  /** What falls off, and where to put it. */
  falls(line: Line): string;
  /** What is in the hand in the end, and where to put it. */
  rest(line: Line): string;
}

/** @param stock what the layout is cut from, `sheet` or `offcut` */
export function listWords(rule: Rule, stock: 'sheet' | 'offcut'): ListWords {
  return {
    cuts: ({ cuts }) => spanWords(cuts),
    gauge: (millimetres) => printLength(millimetres, rule),
    times: ({ times, takes }) => (takes.length > 1 ? `${times} each` : `${times}`),
    takes: ({ takes, edge }) => `${metalWords(takes, stock)}, ${edge} edge`,
    falls({ falls }) {
      const [first] = falls;
      if (first === undefined) return '';
      const strips = falls.flatMap((fall) => (fall.kind === 'strip' ? [fall.strip] : []));
      if (strips.length === 0) return outcomeWords(first, rule);
      return `${stripWords(strips)}: write ${strips.length > 1 ? 'their letters' : 'its letter'} on, lay aside`;
    },
    rest: ({ rest }) => outcomeWords(rest, rule),
  };
}

/** `1` or `1 to 5` */
export function spanWords({ from, to }: { readonly from: number; readonly to: number }): string {
  return from === to ? `${from}` : `${from} to ${to}`;
}

/** `pile 3` */
export const pileWords = (blank: number): string => `pile ${blank}`;

function metalWords(takes: readonly Metal[], stock: 'sheet' | 'offcut'): string {
  const strips = takes.flatMap(({ strip }) => (strip === undefined ? [] : [strip]));
  const what = strips.length === 0 ? `the ${stock}` : stripWords(strips);
  return takes[0]?.begun === true ? `what is left of ${what}` : what;
}

function stripWords(strips: readonly string[]): string {
  return `${strips.length > 1 ? 'strips' : 'strip'} ${strips.join(', ')}`;
}

function outcomeWords(outcome: Outcome, rule: Rule): string {
  switch (outcome.kind) {
    case 'piece':
      return `No. ${outcome.blank}: ${pileWords(outcome.blank)}`;
    case 'offcut':
      return `offcut ${printSize(outcome.length, outcome.width, rule)}: rack, its size written on`;
    case 'scrap':
      return 'scrap: bin';
    case 'edge':
      return 'trimmed edge: bin';
    case 'nothing':
      return 'nothing';
    case 'strip':
      return `${stripWords([outcome.strip])}: write its letter on, lay aside`;
    case 'same':
      return 'more to cut';
  }
}
