/** What stands between the cells of a line. */
export type Separator = ',' | ';' | '\t';

export const SEPARATORS: readonly Separator[] = [',', ';', '\t'];
