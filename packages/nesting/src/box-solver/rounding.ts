/** More than all the rounding of a sum of doubles, as a share of it: a bound grows by so much. */
export const ROUNDING = 2 ** -40;
