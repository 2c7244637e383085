/** Millimetres in an inch, exactly (international yard and pound agreement, 1959). */
export const INCH = 25.4;
