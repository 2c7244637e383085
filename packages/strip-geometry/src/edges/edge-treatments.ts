import { type NamedLength, ofOneLength } from '../named-length.js';
import { doubleHem } from './double-hem.js';
import type { EdgeKind } from './edge-treatment.js';
import { rawEdge } from './raw-edge.js';
import { singleHem } from './single-hem.js';
import { wiredEdge } from './wired-edge.js';

const HEM: NamedLength = { name: 'hem', meaning: 'width of the finished hem' };
const WIRE: NamedLength = { name: 'wire', meaning: 'diameter of the wire' };

/** Every edge treatment that can be chosen, in the order help texts list them. */
export const edgeTreatments: readonly EdgeKind[] = [
  {
    name: 'raw edge',
    summary: 'as sheared; it cuts, and bends easily',
    sizes: [],
    example: {},
    make: rawEdge,
  },
  ofOneLength('single hem', 'folded over once; the usual edge of a cutter', HEM, 6, singleHem),
  ofOneLength('double hem', 'folded over twice, with the raw edge hidden', HEM, 5, doubleHem),
  ofOneLength('wired edge', 'rolled round a wire; the stiffest', WIRE, 2, wiredEdge),
];

/** The edge treatment of that name, such as `double hem`, or undefined if there is none. */
export function edgeTreatmentNamed(name: string): EdgeKind | undefined {
  return edgeTreatments.find((kind) => kind.name === name);
}
