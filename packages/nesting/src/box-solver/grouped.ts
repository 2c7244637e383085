/** Items with the same key together, in their order. */
export function grouped<Item>(
  items: readonly Item[],
  keyOf: (item: Item) => number,
): ReadonlyMap<number, readonly Item[]> {
  const groups = new Map<number, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return groups;
}
