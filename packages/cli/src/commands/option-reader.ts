import { CommandError, EXIT } from '../exit-code.js';
import type { Complaint } from '../faults/fault.js';
import { complaintText } from '../faults/fault-text.js';
import type { Reading } from '../faults/reading.js';
import type { Given } from './command.js';

/** Reads options into values, and collects what is wrong with them so that all of it is told at once. */
export class OptionReader {
  readonly #given: Given;
  readonly #faults: string[] = [];

  constructor(given: Given) {
    this.#given = given;
  }

  /** The value of an option, or undefined where it was not given or cannot be read. */
  optional<T>(key: string, read: (text: string) => Reading<T>): T | undefined {
    const text = this.#given.text(key);
    if (text === undefined) return undefined;
    const reading = read(text);
    if (reading.ok) return reading.value;
    this.complain(key, reading.complaint, text);
    return undefined;
  }

  /** Like `optional`, and a fault where it was not given. */
  required<T>(key: string, read: (text: string) => Reading<T>, hint: string): T | undefined {
    if (this.#given.text(key) === undefined) this.complain(key, { code: 'missing', hint });
    return this.optional(key, read);
  }

  /** The value of what a command works on, or undefined where it cannot be read. */
  subject<T>(name: string, read: (text: string) => Reading<T>): T | undefined {
    const reading = read(this.#given.subject);
    if (reading.ok) return reading.value;
    this.refuseSubject(name, reading.complaint);
    return undefined;
  }

  refuseSubject(name: string, complaint: Complaint): void {
    this.#faults.push(complaintText(name, complaint, this.#given.subject));
  }

  complain(key: string, complaint: Complaint, found?: string): void {
    this.#faults.push(complaintText(`--${key}`, complaint, found));
  }

  /** Like `complain`, but not that an option is missing that was given and cannot be read: that has been told. */
  complainOnce(key: string, complaint: Complaint): void {
    const told = complaint.code === 'missing' && this.#given.text(key) !== undefined;
    if (!told) this.complain(key, complaint, this.#given.text(key));
  }

  /** @throws CommandError with every fault so far, one line each */
  raiseFaults(): void {
    if (this.#faults.length > 0) throw new CommandError(EXIT.badInput, this.#faults.join('\n'));
  }
}
