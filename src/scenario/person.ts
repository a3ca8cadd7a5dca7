/** Region of a person: away until danger begins, then touching if that was given; one who can let go is released once. */
export function personRegion(person: string, touchings: readonly string[]) {
  return {
    initial: 'away',
    states: {
      away: {
        on: { 'danger.begins': { guard: { type: 'isAnyGiven', params: { conditions: touchings } }, target: 'touching' } },
      },
      touching: {
        on: { 'person.released': { guard: { type: 'isThisPerson', params: { person } }, target: 'released' } },
      },
      released: {},
    },
  } as const;
}
