import type { Table } from '../job-sheet/job-sheet.js';
import { parseLength } from '../length/parse-length.js';
import type { ShopUnits } from '../length/unit.js';

// Someone at the shear who knows nothing but the printed list, and has metal of a size.

/** Metal in hand: its length as it lies on the map, left to right, and its width. */
export interface Sheet {
  readonly length: number;
  readonly width: number;
}

/** What lies where when the list is done. */
export interface Bench {
  /** Pieces by the number of their pile. */
  readonly piles: ReadonlyMap<number, readonly Sheet[]>;
  readonly rack: readonly Sheet[];
  /** Scrap without trimmed edges. */
  readonly bin: readonly Sheet[];
  /** How often the gauge was set. */
  readonly settings: number;
  readonly cuts: number;
}

/**
 * Follows the rows of a cutting list, word for word, with an imagined shear.
 * @throws Error where a row cannot be followed
 */
export function followList(table: Table, stock: Sheet, units: ShopUnits, kerf: number): Bench {
  const piles = new Map<number, Sheet[]>();
  const rack: Sheet[] = [];
  const bin: Sheet[] = [];
  /** What lies aside, by its letters; the whole stock under no letter. */
  const aside = new Map<string, Sheet>([['', stock]]);
  let settings = 0;
  let cuts = 0;
  let gauge = Number.NaN;
  const long = (text: string): number => {
    const read = parseLength(text, units);
    if (!read.ok) throw new Error(`"${text}" is no length`);
    return read.value;
  };
  const put = (words: string, metal: Sheet): void => {
    const piece = /^No\. (\d+): pile (\d+)$/.exec(words);
    const size = /^offcut (.+) x (.+): rack, its size written on$/.exec(words);
    if (piece !== null) {
      if (piece[1] !== piece[2]) throw new Error(`${words}: another pile`);
      const number = Number(piece[2]);
      piles.set(number, [...(piles.get(number) ?? []), metal]);
    } else if (size !== null) {
      const [length, width] = [long(size[1] ?? ''), long(size[2] ?? '')];
      if (!isNear(length, metal.length) || !isNear(width, metal.width)) {
        throw new Error(`"${words}" measures ${metal.length} x ${metal.width}`);
      }
      rack.push(metal);
    } else if (words === 'scrap: bin') {
      bin.push(metal);
    } else if (words !== 'trimmed edge: bin') {
      throw new Error(`"${words}" is nowhere`);
    }
  };
  for (const row of table.rows) {
    const [numbers = '', set = '', times = '', take = '', falls = '', rest = ''] = row;
    const told = /^(set|stays) (.+)$/.exec(set);
    if (told === null) throw new Error(`"${set}" sets no gauge`);
    const reading = long(told[2] ?? '');
    if (told[1] === 'set') settings += 1;
    if ((told[1] === 'stays') !== (reading === gauge)) throw new Error(`"${set}" at ${gauge}`);
    gauge = reading;
    const taken = /^(?:what is left of )?(.+), (lower|left) edge$/.exec(take);
    if (taken === null) throw new Error(`"${take}" takes nothing`);
    const isLower = taken[2] === 'lower';
    const names = lettersIn(taken[1] ?? '') ?? [''];
    const each = Number(/^\d+/.exec(times)?.[0]);
    const [first, last = first] = numbers.split(' to ').map(Number);
    if (first !== cuts + 1) throw new Error(`cut ${first} comes after ${cuts}`);
    const letters = [...(lettersIn(falls) ?? [])];
    for (const name of names) {
      let hand = aside.get(name);
      if (hand === undefined) throw new Error(`"${take}" is not there`);
      aside.delete(name);
      for (let time = 1; time <= each; time++) {
        cuts += 1;
        if (hand === undefined) throw new Error(`cut ${cuts} finds nothing in the hand`);
        const extent: number = isLower ? hand.width : hand.length;
        const left: number = extent - gauge - kerf;
        const part = (size: number): Sheet | undefined => {
          if (size < 1e-4 || hand === undefined) return undefined;
          return isLower ? { ...hand, width: size } : { ...hand, length: size };
        };
        const [off, on] = [part(gauge), part(left)];
        const isLast = time === each;
        if (falls === 'more to cut') {
          if (off === undefined) throw new Error(`cut ${cuts} leaves nothing to cut`);
          aside.set(name, off);
        } else if (falls.startsWith('strip')) {
          const letter = letters.shift();
          if (letter === undefined || off === undefined) throw new Error(`"${falls}": no letter`);
          aside.set(letter, off);
        } else if (off === undefined ? falls !== 'nothing' : falls === 'nothing') {
          throw new Error(`cut ${cuts}: "${falls}", but there is ${off?.length} x ${off?.width}`);
        } else if (off !== undefined) put(falls, off);
        hand = on;
        if (!isLast) continue;
        if (rest === 'more to cut') {
          if (hand === undefined) throw new Error(`cut ${cuts} leaves nothing`);
          aside.set(name, hand);
        } else if (hand === undefined ? rest !== 'nothing' : rest === 'nothing') {
          throw new Error(`cut ${cuts}: "${rest}", but there is ${hand?.length} x ${hand?.width}`);
        } else if (hand !== undefined) put(rest, hand);
      }
    }
    if (letters.length > 0) throw new Error(`"${falls}": too many letters`);
    if (cuts !== last) throw new Error(`cut ${cuts} ends "${numbers}"`);
  }
  if (aside.size > 0 && cuts > 0) throw new Error(`${[...aside.keys()]} lies there uncut`);
  return { piles, rack, bin, settings, cuts };
}

/** The letters of `strips A, B`; undefined where none are named. */
function lettersIn(words: string): readonly string[] | undefined {
  const named = /strips? ([A-Z]+(?:, [A-Z]+)*)/.exec(words);
  return named?.[1]?.split(', ');
}

const isNear = (one: number, other: number): boolean => Math.abs(one - other) < 1e-3;
