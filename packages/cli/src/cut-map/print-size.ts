const FIGURE_AND_UNIT = /^(?<figure>.*\d)(?<unit>\D*)$/su;

/**
 * `length x width` as the shop writes lengths, with the unit once where both have the same:
 * `10 3/4 × 1 1/4 in`.
 */
export function printSize(
  size: { readonly length: number; readonly width: number },
  printLength: (millimetres: number) => string,
): string {
  const length = printLength(size.length);
  const width = printLength(size.width);
  const first = FIGURE_AND_UNIT.exec(length)?.groups;
  const unit = FIGURE_AND_UNIT.exec(width)?.groups?.unit;
  const shown = first?.unit === unit ? (first?.figure ?? length) : length;
  return `${shown} × ${width}`;
}
