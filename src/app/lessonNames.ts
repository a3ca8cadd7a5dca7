/** The names of the lessons that come with the page, in the order in which they are best taken; they stand in links. */
export const LESSON_NAMES: readonly string[] = ['a-rod-is-not-a-wire'];
