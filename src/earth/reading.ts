/** What an instrument shows beside what is so. */
export interface Reading {
  readonly reading: number;
  readonly truth: number;
  /** (reading − truth)/truth: below zero the instrument flatters. */
  readonly error: number;
}

/** A reading with its error. */
export function readingOf(reading: number, truth: number): Reading {
  return { reading, truth, error: reading / truth - 1 };
}
