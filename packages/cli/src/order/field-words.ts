/** A field of the geometry as an order names it: `seamAt` is `seam at`. */
export function fieldWords(field: string): string {
  return field.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
