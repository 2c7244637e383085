import type { NewStock, PlannedCutting, PlannedStock } from './rack.js';

/** An offcut of tinplate to put on a rack, 400 x 150 mm unless told otherwise. */
export const offcutOf = (told: Partial<NewStock> = {}): NewStock => ({
  kind: 'offcut',
  name: '',
  length: 400,
  width: 150,
  metal: 'tinplate',
  thickness: 0.28,
  place: 'left rack',
  origin: 'spring order',
  count: 1,
  ...told,
});

/** Whole sheets of tinplate, 700 x 500 mm unless told otherwise. */
export const sheetsOf = (count: number, told: Partial<NewStock> = {}): NewStock => ({
  ...offcutOf(),
  kind: 'sheets',
  name: 'Tinplate 700 x 500',
  length: 700,
  width: 500,
  count,
  ...told,
});

/** How a plan sees a thing that lies on the rack. */
export const plannedOf = (
  mark: string | undefined,
  { kind, length, width, metal, thickness, rolled }: NewStock,
  told: Partial<PlannedStock> = {},
): PlannedStock => ({
  id: mark === undefined ? 'Tinplate 700 x 500' : `rack ${mark}`,
  kind,
  length,
  width,
  metal,
  ...(thickness === undefined ? {} : { thickness }),
  ...(rolled === undefined ? {} : { rolled }),
  ...(mark === undefined ? {} : { mark }),
  fromRack: mark === undefined ? 0 : 1,
  beside: 0,
  bought: 0,
  ...told,
});

/** A plan that cuts each stock in a layout of its own, so many times, and keeps one offcut of each. */
export const cuttingOf = (
  plan: string,
  cuts: readonly { readonly stock: PlannedStock; readonly times?: number }[],
): PlannedCutting => ({
  plan,
  name: `order ${plan}`,
  smallestMark: 0.5,
  stock: cuts.map(({ stock }) => stock),
  layouts: cuts.map(({ stock: { metal, thickness }, times = 1 }, stock) => ({
    stock,
    times,
    scrap: 1000,
    keeps: [
      {
        length: 200,
        width: 50,
        metal,
        ...(thickness === undefined ? {} : { thickness }),
        value: 30,
      },
    ],
  })),
});
