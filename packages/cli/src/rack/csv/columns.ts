/** The columns of a rack as a table, in their order. */
export const COLUMNS = [
  'mark',
  'kind',
  'name',
  'length',
  'width',
  'metal',
  'thickness',
  'rolled',
  'place',
  'from',
  'value',
  'since',
  'promised',
  'count',
] as const;

export type ColumnName = (typeof COLUMNS)[number];
