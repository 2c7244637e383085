/** How much time a search still has. */
export interface Deadline {
  /** Seconds left, 0 or less when it is over. */
  left(): number;
}

/**
 * @param seconds from now
 * @param now milliseconds of a clock that only runs forward
 */
export function deadlineIn(seconds: number, now: () => number = Date.now): Deadline {
  const end = now() + seconds * 1000;
  return { left: () => (end - now()) / 1000 };
}

/** A deadline when so much of the time that is left now is over. */
export function shareOf(deadline: Deadline, share: number): Deadline {
  const until = deadline.left() * (1 - share);
  return { left: () => deadline.left() - until };
}
