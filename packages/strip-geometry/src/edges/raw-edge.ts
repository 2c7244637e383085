import type { EdgeTreatment } from './edge-treatment.js';

/** The edge as the shear leaves it: nothing is added and nothing folded. It cuts; handle with gloves. */
export function rawEdge(): EdgeTreatment {
  return {
    name: 'raw edge',
    allowance: 0,
    foldLines: [],
    notchDepth: 0,
    foldedWidth: 0,
    layers: 0,
    wire: 0,
    takesTab: false,
    source: 'nothing is added',
  };
}
