/** Stands first in a file, so that no spreadsheet takes its UTF-8 for the system's old encoding. */
export const BYTE_ORDER_MARK = '\uFEFF';
