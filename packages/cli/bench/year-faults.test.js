import { describe, expect, it } from 'vitest';
import { faultsOf } from './year-faults.js';

const year = (orders, step) => ({ steps: Array.from({ length: orders }, (_, day) => step(day)) });
const moneyAt = (rate) => (day) => ({ money: rate * (day + 1), offcuts: 10 });

describe('what must not be after a year with the rack', () => {
  it('finds nothing where the rack saved money and is as full as half a year before', () => {
    expect(faultsOf([year(60, moneyAt(5)), year(60, moneyAt(6)), year(60, moneyAt(6))])).toEqual(
      [],
    );
    expect(faultsOf([year(60, moneyAt(6)), year(60, moneyAt(6)), year(60, moneyAt(6))])).toEqual(
      [],
    );
  });

  it('finds a rack that costs more than none, whatever the newest offcuts alone cost', () => {
    const dear = [year(60, moneyAt(7)), year(60, moneyAt(9)), year(60, moneyAt(6))];
    expect(faultsOf(dear)).toEqual(['the year with the rack cost more than the one without']);
    const newestDear = [year(60, moneyAt(5)), year(60, moneyAt(9)), year(60, moneyAt(6))];
    expect(faultsOf(newestDear)).toEqual([]);
  });

  it('finds a rack that grows without end, but not one that was full for a day', () => {
    const growing = year(60, (day) => ({ money: day, offcuts: day }));
    const without = year(60, (day) => ({ money: day, offcuts: 0 }));
    expect(faultsOf([growing, growing, without])).toEqual(['the rack has not stopped growing']);
    const full = year(60, (day) => ({ money: day, offcuts: day === 45 ? 90 : 10 }));
    expect(faultsOf([full, growing, without])).toEqual([]);
  });

  it('says nothing of fewer orders than make a year', () => {
    expect(faultsOf([year(59, moneyAt(7)), year(59, moneyAt(6)), year(59, moneyAt(6))])).toEqual(
      [],
    );
  });
});
