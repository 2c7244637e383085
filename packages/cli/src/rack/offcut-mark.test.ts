import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markOf, readOffcutMark } from './offcut-mark.js';

const number = fc.integer({ min: 1, max: 1_000_000_000 });
const SIGNS = 'ACDEFHJKMNPRTVXY3479';

describe('marks of offcuts', () => {
  it('are short', () => {
    expect(markOf(1)).toHaveLength(3);
    expect(markOf(379)).toHaveLength(3);
    expect(markOf(380)).toHaveLength(4);
    expect(markOf(7_979)).toHaveLength(4);
  });

  it('differ, and are read back however they are typed', () => {
    fc.assert(
      fc.property(number, number, (one, other) => {
        expect(readOffcutMark(` ${markOf(one).toLowerCase()} `)).toBe(markOf(one));
        expect(markOf(one) === markOf(other)).toBe(one === other);
      }),
    );
  });

  it('are no marks when misread in one place', () => {
    fc.assert(
      fc.property(number, fc.nat(), fc.constantFrom(...SIGNS), (of, at, sign) => {
        const mark = markOf(of);
        const place = at % mark.length;
        fc.pre(mark[place] !== sign);
        const misread = mark.slice(0, place) + sign + mark.slice(place + 1);
        expect(readOffcutMark(misread)).toBeUndefined();
      }),
    );
  });

  // ISO/IEC 7064, the note on what its systems detect: nearly all swaps of neighbours.
  it('are seldom marks when two neighbours are swapped', () => {
    let swaps = 0;
    let missed = 0;
    for (let each = 1; each < 20_000; each++) {
      const mark = markOf(each);
      for (let at = 0; at + 1 < mark.length; at++) {
        if (mark[at] === mark[at + 1]) continue;
        swaps++;
        const swapped = mark.slice(0, at) + mark[at + 1] + mark[at] + mark.slice(at + 2);
        if (readOffcutMark(swapped) !== undefined) missed++;
      }
    }
    expect(missed / swaps).toBeLessThan(0.01);
  });

  it('have no sign that is taken for another by hand', () => {
    for (const alike of ['O0QD', 'I1L', 'S5', 'Z2', 'B8', 'G6', 'UV', 'MW', '69']) {
      const used = [...alike].filter((sign) => SIGNS.includes(sign));
      expect(used.length).toBeLessThan(2);
    }
  });

  it.each(['', 'A', 'K7', 'O0L', 'K7MM4I', '🦆🦆🦆', 'AA'])('%j is none', (text) => {
    expect(readOffcutMark(text)).toBeUndefined();
  });
});
