import type { RackStock } from '../rack/rack.js';
import type { RackView } from './rack-view.js';

/** A thing on the rack in inches, an offcut of tinplate of unknown thickness unless told otherwise. */
export const onRack = (
  mark: string,
  length: number,
  width: number,
  told: Partial<RackStock> = {},
): RackStock => ({
  mark,
  kind: 'offcut',
  name: '',
  length: length * 25.4,
  width: width * 25.4,
  metal: 'tinplate',
  place: 'left rack',
  origin: '',
  count: 1,
  promised: 0,
  addedAt: '2026-03-02T09:00:00.000Z',
  ...told,
});

/** What a plan sees of a rack. */
export const viewOf = (told: Partial<RackView> = {}): RackView => ({
  id: 'rack of tests',
  revision: 4,
  offcuts: [],
  sheets: [],
  keepRules: [],
  ...told,
});
