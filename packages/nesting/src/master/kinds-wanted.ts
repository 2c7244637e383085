/** How many kinds of pieces a demand wants any of. */
export function kindsWanted(demand: readonly number[]): number {
  return demand.filter((quantity) => quantity > 0).length;
}
