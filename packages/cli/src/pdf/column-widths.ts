/**
 * Widths of columns that together take no more than the room: those that want no more than
 * an even share get what they want, the others share alike what is left.
 */
export function columnWidths(wanted: readonly number[], room: number): readonly number[] {
  let open = wanted.map((_, index) => index);
  let left = room;
  const widths = wanted.map(() => 0);
  for (;;) {
    const share = left / open.length;
    const content = open.filter((index) => (wanted[index] ?? 0) <= share);
    if (content.length === 0) {
      for (const index of open) widths[index] = share;
      return widths;
    }
    for (const index of content) {
      widths[index] = wanted[index] ?? 0;
      left -= wanted[index] ?? 0;
    }
    open = open.filter((index) => !content.includes(index));
    if (open.length === 0) return widths;
  }
}
