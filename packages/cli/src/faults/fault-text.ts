import type { Complaint, Fault, FieldPath } from './fault.js';

/** Longest stretch of a document that a message repeats. */
const LONGEST_QUOTE = 60;

/** A text with what a terminal obeys or hides as escapes: control and format characters. */
function visible(text: string): string {
  return text.replaceAll(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, (sign) => {
    const short = JSON.stringify(sign).slice(1, -1);
    if (short !== sign) return short;
    const code = (sign.codePointAt(0) ?? 0).toString(16);
    return code.length > 4 ? `\\u{${code}}` : `\\u${code.padStart(4, '0')}`;
  });
}

/** `items[3].across flats`; a name that is not plain words is put in quotes. */
export function pathText(path: FieldPath): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    const name = PLAIN_NAME.test(step) ? shortened(step) : visible(JSON.stringify(shortened(step)));
    return text === '' ? name : `${text}.${name}`;
  }, '');
}

const PLAIN_NAME = /^[\p{L}\p{N}_-]+(?: [\p{L}\p{N}_-]+)*$/u;

function shortened(text: string): string {
  const signs = [...text];
  return signs.length > LONGEST_QUOTE ? `${signs.slice(0, LONGEST_QUOTE - 3).join('')}...` : text;
}

/**
 * One line: `order.yaml:41: items[3].quantity must be ...; found 1.5`, or for a table
 * `items.csv: row 5, column D: quantity must be ...; found 1.5`.
 */
export function faultText(file: string, fault: Fault): string {
  const place = placeText(file, fault);
  const subject = pathText(fault.path);
  const what = sentence(fault.complaint, quote(fault.found));
  return subject === '' ? `${place}: ${what.whole}` : `${place}: ${subject} ${what.field}`;
}

function placeText(file: string, { line, cell }: Fault): string {
  const name = visible(cell?.file ?? file);
  if (cell === undefined) return line === undefined ? name : `${name}:${line}`;
  if (cell.row === undefined) return name;
  const column = cell.column === undefined ? '' : `, column ${cell.column}`;
  return `${name}: row ${cell.row}${column}`;
}

/** What is wrong with one value given on the command line: `--depth must be ...; found ...`. */
export function complaintText(subject: string, complaint: Complaint, found?: string): string {
  return `${subject} ${sentence(complaint, quote(found)).field}`;
}

/** One line of a document, short enough for a message, control characters shown as escapes. */
export function quote(text: string | undefined): string {
  if (text === undefined) return 'nothing';
  if (text.trim() === '') return text === '' ? 'nothing' : 'only blanks';
  return visible(shortened(text));
}

interface Sentence {
  /** Follows the name of a field. */
  readonly field: string;
  /** Stands alone, for the document as a whole. */
  readonly whole: string;
}

function sentence(complaint: Complaint, found: string): Sentence {
  const must = (right: string): Sentence => ({
    field: `must be ${right}; found ${found}`,
    whole: `must be ${right}; found ${found}`,
  });
  const says = (text: string): Sentence => ({ field: text, whole: text });
  switch (complaint.code) {
    case 'not a length':
      return must('a length such as 1 5/8, 1.625 in or 41.3 mm');
    case 'not a size':
      return must('a length and a width such as 28 x 20 in or 711 x 508 mm');
    case 'zero denominator':
      return must('a fraction that does not divide by zero');
    case 'unknown unit':
      return must(`in inches (in), mm or cm, not in "${complaint.unit}"`);
    case 'must be above zero':
      return must('above 0');
    case 'must not be negative':
      return must('0 or more');
    case 'too large':
      return must(`at most ${complaint.limit}`);
    case 'too small':
      return must(`at least ${complaint.limit}`);
    case 'not a whole number':
      return must(`a whole number of at least ${complaint.least}`);
    case 'not a number':
      return must('a plain number such as 0.44');
    case 'not a price':
      return must('a price with at most two decimals, such as 7.40');
    case 'not a priced sheet':
      return must('a size and a price such as 28 x 20 in at 7.40');
    case 'not yes or no':
      return must('yes or no');
    case 'not a stock limit':
      return must('yes, no, or how many can be bought');
    case 'not layouts':
      return must('the numbers of cut maps such as 2 or 1,2x3, where x3 is for cut three times');
    case 'not corners':
      return must('a list of at least three corners such as [[0, 0], [3, 0], [3, 2]]');
    case 'not text':
      return must('a text');
    case 'not a list':
      return must('a list, each entry on a line that starts with a dash');
    case 'not a section':
      return must('a section of "field: value" lines');
    case 'empty list':
      return says('is empty; give at least one entry');
    case 'text too long':
      return must(`a text of at most ${complaint.limit} characters`);
    case 'control characters':
      return must('one line of plain text');
    case 'not a choice':
      return says(
        `must be ${choiceText(complaint.choices)}; found ${found}${meant(complaint.nearest)}`,
      );
    case 'unknown field':
      return says(
        complaint.nearest === undefined
          ? `is not a known field; known here: ${complaint.known.join(', ')}`
          : `is not a known field${meant(complaint.nearest)}`,
      );
    case 'unknown size':
      return says(
        `is no size of a ${complaint.outline}; its sizes are ${complaint.known.join(', ')}`,
      );
    case 'missing':
      return says(`is missing${complaint.hint === undefined ? '' : `; give ${complaint.hint}`}`);
    case 'duplicate name':
      return says(`must be a name of its own; found ${found}, as in ${pathText(complaint.first)}`);
    case 'outline':
      return says(`gives no outline: ${withoutStop(complaint.reason)}; found ${found}`);
    case 'strip':
      return says(`gives no strip: ${withoutStop(complaint.reason)}`);
    case 'bend rule':
      return says(`gives no bend rule: ${withoutStop(complaint.reason)}`);
    case 'not a thickness':
      return must(
        'a length such as 0.011 in, or 100 lb of tinplate, 28 ga of uncoated or galvanized steel, 16 oz of copper',
      );
    case 'metal':
      return says(`gives no thickness: ${withoutStop(complaint.reason)}`);
    case 'measure of another metal':
      return says(
        `is ${complaint.measure}, the measure of ${choiceText(complaint.sold, 'and')} and not of ` +
          `${complaint.metal}; found ${found}; give a length, or name the metal`,
      );
    case 'length of another kind':
      return says(
        `is no length of a ${complaint.kind}, which takes ` +
          `${complaint.known.length === 0 ? 'none' : choiceText(complaint.known, 'and')}; leave it out`,
      );
    case 'not a seam place':
      return must('the number of a corner, a distance such as 2 in, or middle');
    case 'drawing':
      return says(`gives no outline: ${withoutStop(complaint.reason)}`);
    case 'not a drawing':
      return must('the file of a drawing in SVG, such as duck.svg');
    case 'two outlines':
      return says(`stands in place of an outline; leave out ${found}`);
    case 'unreadable':
      return says(`cannot be read: ${complaint.reason}`);
    case 'unreadable table':
      return says(
        `must be a list, or the file of a table such as items.csv; ${found} cannot be read: ` +
          complaint.reason,
      );
    case 'not YAML':
      return says(`not readable as YAML: ${complaint.reason}`);
    case 'not JSON':
      return says(`not readable as JSON: ${complaint.reason}`);
    case 'not CSV':
      return says(`not readable as CSV: ${complaint.reason}`);
    case 'unknown column':
      return says(
        complaint.nearest === undefined
          ? `is no known column; known here: ${firstOf(complaint.known)}`
          : `is no known column${meant(complaint.nearest)}`,
      );
    case 'column twice':
      return says('is the heading of two columns; leave one out');
    case 'cells without a column':
      return says(`has more cells than there are headings; found ${found}`);
    case 'empty table':
      return says(
        `the file is empty; its first row has headings such as ${firstOf(complaint.known)}`,
      );
    case 'not a mark': {
      const { wrong, nearest } = complaint;
      const asked = nearest.length === 0 ? '' : `; did you mean ${choiceText(nearest)}?`;
      return says(`${NOT_A_MARK[wrong]}; found ${found}${asked}`);
    }
    case 'mark twice':
      return says(`must stand in one row alone; found ${found}, as in row ${complaint.row}`);
    case 'two formats':
      return says(`stands in place of ${complaint.other}; leave one out`);
    case 'nothing to correct':
      return says(`is what to correct, but nothing says how; give ${choiceText(complaint.known)}`);
    case 'no main size':
      return says(
        complaint.known.length === 0
          ? `tells nothing of a ${complaint.outline}, which has no one size; leave it out`
          : `may be the ${choiceText(complaint.known)} of a ${complaint.outline}; ` +
              'name the column so',
      );
    case 'size twice':
      return says(`stands for ${complaint.other}, which is given too; leave one out`);
    case 'empty file':
      return says('the file is empty; an order needs shop, sheets or offcuts, and items');
    case 'not marks':
      return must(`a whole number of marks of ${complaint.mark} mm`);
    case 'disagrees':
      return must(complaint.expected);
    case 'schema':
      return says(`${complaint.reason}; found ${found}`);
  }
}

const NOT_A_MARK = {
  sign: 'must be the three signs or more that are written on the metal',
  check: 'is misread, or lacks a sign',
  absent: 'is not on the rack',
} as const;

/** The first few of many, and how many more there are. */
function firstOf(known: readonly string[]): string {
  const shown = known.length > 14 ? known.slice(0, 5) : known;
  const more = known.length - shown.length;
  return `${shown.join(', ')}${more === 0 ? '' : ` and ${more} more`}`;
}

/** A library's message, to be carried on with. */
function withoutStop(message: string): string {
  return message.replace(/\.$/, '');
}

function meant(nearest: string | undefined): string {
  return nearest === undefined ? '' : `; did you mean "${nearest}"?`;
}

/** `a`, `a or b`, `a, b or c` */
export function choiceText(choices: readonly string[], last: 'or' | 'and' = 'or'): string {
  const end = choices.at(-1) ?? '';
  return choices.length < 2 ? end : `${choices.slice(0, -1).join(', ')} ${last} ${end}`;
}
