/** Coins that a net remnant of so many ticks by so many is worth in the rack; 0 for scrap. */
export type KeepValue = (length: number, width: number) => number;

/** Where no remnant has a value. */
export const worthless: KeepValue = () => 0;
