/**
 * The places where a x^2 + b x + c is 0, without the loss of digits of the
 * schoolbook formula. Where a or b is 0 there are fewer.
 */
export function quadraticRoots(a: number, b: number, c: number): number[] {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) {
    return [];
  }
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  return [q / a, c / q].filter(Number.isFinite);
}
