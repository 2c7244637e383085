import type { Complaint } from './fault.js';

/** What came of reading a text as a value: the value, or what is wrong with the text. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly complaint: Complaint };

export const accept = <T>(value: T): Reading<T> => ({ ok: true, value });

export const refuse = (complaint: Complaint): Reading<never> => ({ ok: false, complaint });
