/** Region of an insulation fault: away until danger begins, then in force for the rest of the run if it was given. */
export function defectRegion(condition: string) {
  return {
    initial: 'absent',
    states: {
      absent: {
        on: { 'danger.begins': { guard: { type: 'isGiven', params: { condition } }, target: 'struck' } },
      },
      struck: {},
    },
  } as const;
}
