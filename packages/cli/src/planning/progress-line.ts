import type { PlanProgress } from '@stripwright/nesting';
import type { Output } from '../environment.js';
import { printMoney } from '../money.js';
import { counted } from '../report/counted.js';
import { cutToColumns } from '../report/terminal-width.js';

/** Narrower than any terminal in use, since a line that wraps cannot be cleared. */
const COLUMNS = 79;
const CLEAR_TO_END = '\u001b[K';

/** One line on a terminal that tells how far planning has come, written over and over. */
export class ProgressLine {
  readonly #output: Output;
  readonly #currency: string;
  readonly #what: string;
  #shown = '';
  #progress = ' ...';
  #stopping = '';

  constructor(output: Output, pieces: number, currency: string) {
    this.#output = output;
    this.#currency = currency;
    this.#what = `Planning ${counted(pieces, 'piece')}`;
    this.#show();
  }

  tell({ phase, cost, bound }: PlanProgress): void {
    const money = (coins: number) => printMoney(coins, this.#currency);
    const best = cost === undefined ? 'no plan yet' : `best ${money(cost)}`;
    this.#progress = `: ${best}, least possible ${money(bound)}, ${phase}`;
    this.#show();
  }

  stopping(): void {
    this.#stopping = 'Stopping. ';
    this.#show();
  }

  clear(): void {
    this.#output.write(`\r${CLEAR_TO_END}`);
  }

  #show(): void {
    const line = cutToColumns(`${this.#stopping}${this.#what}${this.#progress}`, COLUMNS);
    if (line === this.#shown) return;
    this.#output.write(this.#shown === '' ? line : `\r${line}${CLEAR_TO_END}`);
    this.#shown = line;
  }
}
