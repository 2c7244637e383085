/** Something in a plan that does not hold. */
export interface PlanFault {
  readonly code:
    | 'unknown stock'
    | 'unknown piece'
    | 'not a whole number'
    | 'wrong size'
    | 'must not turn'
    | 'bad cut'
    | 'wrong stage'
    | 'cut too long'
    | 'pieces and remnants differ from what the cuts leave'
    | 'demand not met exactly'
    | 'more stock than there is'
    | 'wrong purchase'
    | 'wrong cost'
    | 'bound contradicts cost';
  /** What was found and what would be right. */
  readonly message: string;
  /** Index of the layout, where the fault is in one. */
  readonly layout?: number;
}
