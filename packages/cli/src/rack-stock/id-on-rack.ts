/** What stock from the rack is called in a plan: sheets of a size that the order names go by that name. */
export const idOnRack = (mark: string): string => `rack ${mark}`;
