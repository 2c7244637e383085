/**
 * What the machine allows, as the planner reckons with it. Gross lengths: see
 * `part.ts`.
 */
export interface Limits {
  /** Metal that every cut turns into dust, in ticks. */
  readonly kerf: number;
  /** The longest cut in net ticks; `Infinity` for no limit. */
  readonly longestCut: number;
  /** Nothing that is parted is narrower than this, in net ticks; at least 1. */
  readonly narrowest: number;
}

/**
 * Whether a rectangle may end with so much to spare beyond its last part. With a
 * rest of at most one kerf no metal is left there; otherwise the last cut parts
 * off `rest - kerf`, which must not be too narrow.
 * @param rest gross ticks, at least 0
 */
export function mayRest(rest: number, { kerf, narrowest }: Limits): boolean {
  return rest <= kerf || rest - kerf >= narrowest;
}

/** What is left of a gross rest once it is cut off, in net ticks; 0 where the kerf takes it. */
export function netRest(rest: number, { kerf }: Limits): number {
  return Math.max(0, rest - kerf);
}
