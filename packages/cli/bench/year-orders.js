/**
 * Invented orders of a bakery co-operative over a year, each as the text of an order
 * file: some shapes, some of each, small and large orders by turns. The same for the
 * same seed.
 */

/** A small generator of random numbers (mulberry32, public domain), so that a seed says all. */
export function seededRandom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Shapes with the lengths that each takes, in millimetres for a size of 1. */
const SHAPES = [
  ['heart', (size) => [`across: ${size}`]],
  ['crescent', (size) => [`across: ${size}`, `thick: ${Math.round(size * 0.4)}`]],
  ['regular polygon', (size) => ['sides: 6', `across flats: ${size}`]],
  ['acorn', (size) => [`high: ${size}`]],
  ['sailboat', (size) => [`across: ${size}`]],
  ['circle', (size) => [`across: ${size}`]],
  ['rectangle', (size) => [`long: ${size}`, `wide: ${Math.round(size * 0.4)}`]],
];
const DEPTHS = [18, 22, 25, 25, 30];

/** What the shop is, the same in all orders of the year; a square metre of new sheet costs 18 to 20. */
const SHOP = `shop:
  units: mm
  smallest mark: 0.5
  thickness: 0.28
  hem: 6
  tab: 12
  shear:
    longest cut: 900
    narrowest strip: 5
  keep offcuts from: 180 x 30
  offcuts worth: 7.00
  offcut trouble: 0.05
sheets:
  - { name: Tinplate 700 x 500, size: 700 x 500, price: 6.50 }
  - { name: Tinplate 500 x 350, size: 500 x 350, price: 3.50 }
`;

/** @returns the texts of so many orders */
export function yearOrders(seed, orders) {
  const random = seededRandom(seed);
  const whole = (least, most) => least + Math.floor(random() * (most - least + 1));
  const pick = (list) => list[Math.floor(random() * list.length)];
  return Array.from({ length: orders }, (_, number) => {
    const lines = [`name: Order ${number + 1} of the year`, SHOP.trimEnd(), 'items:'];
    const depth = pick(DEPTHS);
    for (let item = 1, items = whole(1, 4); item <= items; item++) {
      const [outline, lengths] = pick(SHAPES);
      lines.push(
        `  - name: ${outline} ${item}`,
        `    outline: ${outline}`,
        ...lengths(whole(40, 110)).map((length) => `    ${length}`),
        // Most orders are of one depth.
        `    depth: ${random() < 0.7 ? depth : pick(DEPTHS)}`,
        `    quantity: ${whole(2, random() < 0.3 ? 40 : 12)}`,
      );
    }
    return `${lines.join('\n')}\n`;
  });
}
