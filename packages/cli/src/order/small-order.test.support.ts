import { families } from '@stripwright/strip-geometry';
import { DocumentError } from '../faults/fault.js';
import { readOrder } from './read-order.js';
import type { SizedOrder } from './strips.js';

/** A small order that is in order. Its lines are counted on by tests. */
export const SMALL_ORDER = `name: Small order
shop:
  units: in
  smallest mark: 1/32 in
  currency: $
  hem: 1/4
  tab: 1/2
  shear:
    longest cut: 36 in
  keep offcuts from: 6 x 1 in
sheets:
  - name: Large
    size: 28 x 20 in
    price: 7.40
    on hand: 1
    can buy: yes
  - name: Small
    size: 20 x 14 in
    price: 3.90
offcuts:
  - { name: A, size: 17 1/2 x 6 in }
items:
  - name: Heart
    outline: heart
    across: 4 in
    depth: 1 in
    quantity: 3
  - name: Hexagon
    outline: regular polygon
    sides: 6
    across flats: 3
    depth: 1
    hem: 0
    quantity: 2
  - name: House
    outline: polygon
    corners: [[0, 0], [3, 0], [3, 2], [1 1/2, 3 1/4], [0, 2]]
    depth: 3/4
    quantity: 1
  - name: Lid
    blank: 6 x 4 in
    turn: no
    quantity: 2
`;

export function read(text: string): SizedOrder {
  return readOrder(text, 'order.yaml', families);
}

/** Every line of what is wrong with an order; empty where nothing is. */
export function faultsOf(text: string): readonly string[] {
  try {
    read(text);
    return [];
  } catch (error) {
    if (error instanceof DocumentError) return error.message.split('\n');
    throw error;
  }
}

/** The small order with one of its texts replaced. */
export function altered(from: string, to: string): string {
  if (!SMALL_ORDER.includes(from)) throw new Error(`The small order does not say "${from}".`);
  return SMALL_ORDER.replace(from, to);
}
