/** More words of the desk: the strip, the stage, conditions, links and files. */
export const DESK_WORDS = {
  'desk.try': 'Try it',
} as const;
