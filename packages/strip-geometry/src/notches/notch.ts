/** A V cut through the hem at a bend. Distances along the strip from its square end. */
export interface Notch {
  /** Number of the bend. */
  readonly bend: number;
  /** The point of the V, at the bend mark. */
  readonly at: number;
  /** From the raw edge to the point of the V, which is on the hem line. */
  readonly depth: number;
  /** Degrees to each side; 0 is a slit. */
  readonly halfAngle: number;
  /** Degrees to each side that let the hem clear itself; 0 where it opens. */
  readonly least: number;
  /** How deep the two hems would lie in each other's room there, millimetres to each side; 0 where they clear. */
  readonly overlap: number;
  /** What the bend does to the hem. */
  readonly hem: 'closes' | 'opens';
  /** Ends of the V's mouth on the raw edge. */
  readonly from: number;
  readonly to: number;
}

/** Something about a notch or a hem that the user should know. */
export type HemNotice = HemFinding & {
  /** Where the limit comes from that it passes. */
  readonly source: string;
  readonly message: string;
};

/** What is found, and where. */
type HemFinding =
  | {
      readonly code: 'notch too narrow';
      readonly bend: number;
      readonly halfAngle: number;
      readonly least: number;
    }
  | {
      readonly code: 'notches overlap';
      /** Numbers of the two bends. */
      readonly bends: readonly [number, number];
      /** How much hem is missing between them, millimetres along the raw edge. */
      readonly by: number;
    }
  | {
      readonly code: 'curve too tight';
      /** Number of the curve, counted from the square end. */
      readonly curve: number;
      readonly radius: number;
    };
