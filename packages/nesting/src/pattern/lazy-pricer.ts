import type { PatternPricer, PricedPatterns } from './pattern-pricer.js';

/** Is made when it is first asked for anything: an order may be planned, or its time be over, before that. */
export class LazyPricer implements PatternPricer {
  readonly #make: () => PatternPricer;
  #made: PatternPricer | undefined;

  constructor(make: () => PatternPricer) {
    this.#make = make;
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    return this.#pricer.price(values, coin);
  }

  get atMost(): PatternPricer['atMost'] {
    const pricer = this.#pricer;
    return pricer.atMost?.bind(pricer);
  }

  get within(): PatternPricer['within'] {
    const pricer = this.#pricer;
    return pricer.within?.bind(pricer);
  }

  get bandsOf(): PatternPricer['bandsOf'] {
    const pricer = this.#pricer;
    return pricer.bandsOf?.bind(pricer);
  }

  get #pricer(): PatternPricer {
    this.#made ??= this.#make();
    return this.#made;
  }
}
