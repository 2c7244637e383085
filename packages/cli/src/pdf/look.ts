/** Font sizes, millimetres, and the gaps between blocks. */
export const TITLE = { size: 6.4, bold: true } as const;
export const SECTION = { size: 5, bold: true } as const;
export const BODY = { size: 3.2 } as const;
export const STRONG = { size: 3.2, bold: true } as const;
export const SMALL = { size: 2.7 } as const;
export const GAP = 3.2;
