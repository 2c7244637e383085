/** What stands between the cells of a row. */
export type Separator = ',' | ';' | '\t';

export const SEPARATORS: readonly Separator[] = [',', ';', '\t'];
