/** Something in a plan that does not hold. */
export interface PlanFault {
  readonly code:
    | 'unknown stock'
    | 'unknown piece'
    | 'not a whole number'
    | 'wrong size'
    | 'must not turn'
    | 'other metal'
    | 'against the rolling'
    | 'edges not trimmed'
    | 'bad cut'
    | 'wrong stage'
    | 'wrong first direction'
    | 'cut too long'
    | 'strip too narrow'
    | 'pieces and remnants differ from what the cuts leave'
    | 'wrong remnant'
    | 'demand not met exactly'
    | 'wrong spares'
    | 'more stock than there is'
    | 'wrong purchase'
    | 'wrong cost'
    | 'bound contradicts cost';
  /** What was found and what would be right. */
  readonly message: string;
  /** Index of the layout, where the fault is in one. */
  readonly layout?: number;
}

/** A fault within a layout, before it is said which. */
export type LayoutFault = Omit<PlanFault, 'layout'>;
