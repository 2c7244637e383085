import type { Work } from '../order/order.js';

/** What is counted, in the words of the bench. */
export const WORK_WORDS: Readonly<Record<Work, string>> = {
  cut: 'Cuts',
  bend: 'Bends and formed curves',
  notch: 'Notches and snips',
  seam: 'Seams',
};
