import type { LayoutTimes, NewStock, PlannedCutting, PlannedStock, RackJob } from './rack.js';
import { RackError, type RackErrorCode } from './rack-error.js';

interface Thing extends NewStock {
  count: number;
  place: string;
  length: number;
  /** To whom how many of it are promised. */
  readonly promises: Map<string, number>;
}

interface Job {
  readonly cutting: PlannedCutting;
  readonly booked: number[];
  received: boolean;
  letGo: boolean;
  timesLetGo: number;
}

interface Booking {
  readonly plan: string;
  readonly layouts: readonly LayoutTimes[];
  /** What it changed of each thing: its count, and what is promised of it to the job. */
  readonly changes: Map<string, { count: number; promised: number }>;
  readonly received: boolean;
  /** Whether nothing was promised to the job before, and how often it had been let go. */
  readonly opened: boolean;
  readonly timesLetGo: number;
}

const no = (code: RackErrorCode): never => {
  throw new RackError(code, code);
};
const sum = (numbers: Iterable<number>) => [...numbers].reduce((total, each) => total + each, 0);

/**
 * What a rack should do, as plainly as it can be said: maps and lists, each method on
 * a copy that takes the place of the old one if it is not refused.
 */
export class RackModel {
  things = new Map<string, Thing>();
  jobs = new Map<string, Job>();
  bookings: Booking[] = [];
  /** Marks in the order in which they are given out. */
  readonly #markOf: (number: number) => string;

  constructor(markOf: (number: number) => string) {
    this.#markOf = markOf;
  }

  /** Does it, or leaves all as it was and throws. */
  whole<T>(deed: () => T): T {
    const before = structuredClone({
      things: this.things,
      jobs: this.jobs,
      bookings: this.bookings,
    });
    try {
      return deed();
    } catch (error) {
      Object.assign(this, before);
      throw error;
    }
  }

  add(stock: NewStock): string {
    if (stock.kind === 'sheets') {
      for (const [mark, thing] of this.things) {
        const isSame = thing.kind === 'sheets' && thing.length === stock.length;
        if (!isSame) continue;
        thing.count += stock.count;
        return mark;
      }
    }
    const mark = this.#markOf(this.things.size + 1);
    this.things.set(mark, { ...stock, promises: new Map() });
    return mark;
  }

  remove(mark: string, count: number): void {
    const thing = this.things.get(mark) ?? no('no such mark');
    if (thing.count < count) no('not enough');
    if (thing.count - sum(thing.promises.values()) < count) no('promised');
    thing.count -= count;
  }

  correct(mark: string, length: number): void {
    const thing = this.things.get(mark) ?? no('no such mark');
    if (thing.count === 0) no('not enough');
    if (thing.length === length) return;
    if (sum(thing.promises.values()) > 0) no('promised');
    if (thing.kind === 'sheets') {
      for (const other of this.things.values()) {
        if (other.kind === 'sheets' && other.length === length) no('bad value');
      }
    }
    thing.length = length;
  }

  hold(cutting: PlannedCutting): void {
    const job = this.#job(cutting);
    this.#refuseBooked(job);
    for (const index of cutting.stock.keys()) this.#promise(job, index);
  }

  letGo(plan: string): void {
    const job = this.jobs.get(plan) ?? no('not held');
    this.#refuseBooked(job);
    if (job.letGo) no('let go already');
    for (const thing of this.things.values()) thing.promises.delete(plan);
    job.letGo = true;
    job.timesLetGo++;
  }

  receive(cutting: PlannedCutting): void {
    const job = this.#job(cutting);
    this.#refuseBooked(job);
    if (job.received) no('booked already');
    this.#receive(job);
    for (const index of cutting.stock.keys()) this.#promise(job, index);
  }

  book(cutting: PlannedCutting, layouts?: readonly LayoutTimes[]): void {
    const opened = this.jobs.get(cutting.plan)?.letGo ?? true;
    const job = this.#job(cutting);
    this.#refuseBooked(job);
    const before = this.#counts(cutting.plan);
    const left = cutting.layouts.map(({ times }, index) => times - (job.booked[index] ?? 0));
    const asked =
      layouts ?? left.map((times, layout) => ({ layout, times })).filter(({ times }) => times > 0);
    for (const { layout, times } of asked) {
      const most = left[layout] ?? no('no such layout');
      if (times > most) no('booked already');
    }
    const receives = !job.received && cutting.stock.some(({ bought }) => bought > 0);
    if (receives) this.#receive(job);
    const now = asked.map(({ layout }) => cutting.layouts[layout]?.stock);
    for (const index of cutting.stock.keys()) {
      try {
        this.#promise(job, index);
      } catch (error) {
        if (now.includes(index)) throw error;
      }
    }
    for (const { layout, times } of asked) this.#cut(job, layout, times);
    if (this.#isBooked(job)) {
      for (const thing of this.things.values()) thing.promises.delete(cutting.plan);
    }
    const changes = new Map<string, { count: number; promised: number }>();
    for (const [mark, after] of this.#counts(cutting.plan)) {
      const [count, promised] = before.get(mark) ?? [0, 0];
      changes.set(mark, { count: after[0] - count, promised: after[1] - promised });
    }
    const { timesLetGo } = job;
    this.bookings.push({
      plan: cutting.plan,
      layouts: asked,
      changes,
      received: receives,
      opened,
      timesLetGo,
    });
  }

  undo(): void {
    const booking = this.bookings.pop() ?? no('nothing to undo');
    const job = this.jobs.get(booking.plan) ?? no('not held');
    const isLetGo = job.timesLetGo > booking.timesLetGo;
    if (isLetGo && !job.letGo) no('cannot be undone');
    for (const [mark, change] of booking.changes) {
      const thing = this.things.get(mark) ?? no('no such mark');
      thing.count -= change.count;
      const mine = thing.promises.get(booking.plan) ?? 0;
      if (!isLetGo) thing.promises.set(booking.plan, mine - change.promised);
      const promises = [...thing.promises.values()];
      if (thing.count < sum(promises) || promises.some((count) => count < 0))
        no('cannot be undone');
    }
    for (const { layout, times } of booking.layouts) {
      job.booked[layout] = (job.booked[layout] ?? 0) - times;
    }
    if (booking.received) job.received = false;
    if (booking.opened && !isLetGo) {
      job.letGo = true;
      job.timesLetGo++;
    }
  }

  state(plan: string): RackJob['state'] {
    const job = this.jobs.get(plan) ?? no('not held');
    if (this.#isBooked(job)) return 'booked';
    if (job.letGo) return 'let go';
    return sum(job.booked) > 0 ? 'partly booked' : 'held';
  }

  /** What lies there, and how many are promised to the plan. */
  #counts(plan: string): Map<string, readonly [number, number]> {
    return new Map(
      [...this.things].map(([mark, { count, promises }]) => [
        mark,
        [count, promises.get(plan) ?? 0],
      ]),
    );
  }

  #job(cutting: PlannedCutting): Job {
    const known = this.jobs.get(cutting.plan);
    const booked = cutting.layouts.map(() => 0);
    const job = known ?? { cutting, booked, received: false, letGo: false, timesLetGo: 0 };
    job.letGo = false;
    this.jobs.set(cutting.plan, job);
    return job;
  }

  #isBooked({ cutting, booked }: Job): boolean {
    return cutting.layouts.every(({ times }, index) => booked[index] === times);
  }

  #refuseBooked(job: Job): void {
    if (this.#isBooked(job)) no('booked already');
  }

  #receive(job: Job): void {
    job.received = true;
    for (const { bought, id, mark, fromRack, beside, ...size } of job.cutting.stock) {
      if (bought === 0) continue;
      const there = this.things.get(mark ?? '');
      const over = (there?.length ?? 0) - size.length;
      if (there !== undefined && over >= 0 && over < job.cutting.smallestMark) {
        there.count += bought;
        continue;
      }
      this.add({ ...size, kind: 'sheets', name: id, count: bought, place: '', origin: '' });
    }
  }

  /** What a plan takes a stock from: undefined for metal that is not on the rack. */
  #source(job: Job, stock: PlannedStock): Thing | undefined {
    if (stock.mark !== undefined) {
      const thing = this.things.get(stock.mark);
      if (thing === undefined || thing.count === 0) return no('not enough');
      const over = thing.length - stock.length;
      return over >= 0 && over < job.cutting.smallestMark ? thing : no('changed');
    }
    if (stock.bought === 0 || !job.received) return undefined;
    return [...this.things.values()].find(
      ({ kind, length }) => kind === 'sheets' && length === stock.length,
    );
  }

  /** How many it still takes of a stock from the rack. */
  #toTake(job: Job, index: number): number {
    const stock = job.cutting.stock[index];
    const of = (times: (layout: number) => number) =>
      sum(job.cutting.layouts.map((layout, at) => (layout.stock === index ? times(at) : 0)));
    const all = of((at) => job.cutting.layouts[at]?.times ?? 0);
    const cut = of((at) => job.booked[at] ?? 0);
    return Math.max(0, all - Math.max(cut, stock?.beside ?? 0));
  }

  #promise(job: Job, index: number): void {
    const stock = job.cutting.stock[index];
    const left = job.cutting.layouts.some(
      (layout, at) => layout.stock === index && layout.times > (job.booked[at] ?? 0),
    );
    if (stock === undefined || !left) return;
    const thing = this.#source(job, stock);
    if (thing === undefined) return;
    const take = this.#toTake(job, index);
    const mine = thing.promises.get(job.cutting.plan) ?? 0;
    const more = (job.received ? take : Math.min(take, stock.fromRack)) - mine;
    if (more <= 0) return;
    if (thing.count - sum(thing.promises.values()) < more) no('promised');
    thing.promises.set(job.cutting.plan, mine + more);
  }

  #cut(job: Job, layout: number, times: number): void {
    const { stock: index, keeps } = job.cutting.layouts[layout] ?? no('no such layout');
    const stock = job.cutting.stock[index];
    const before = this.#toTake(job, index);
    job.booked[layout] = (job.booked[layout] ?? 0) + times;
    const take = before - this.#toTake(job, index);
    const thing = stock && take > 0 ? this.#source(job, stock) : undefined;
    if (thing !== undefined) {
      const mine = thing.promises.get(job.cutting.plan) ?? 0;
      thing.count -= take;
      thing.promises.set(job.cutting.plan, Math.max(0, mine - take));
      if (thing.count < sum(thing.promises.values())) no('not enough');
    }
    for (let cutting = 0; cutting < times; cutting++) {
      for (const { value, ...size } of keeps) {
        this.add({
          ...size,
          kind: 'offcut',
          name: '',
          count: 1,
          place: '',
          origin: '',
          bookValue: value,
        });
      }
    }
  }
}
