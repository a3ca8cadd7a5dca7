import { CAUTION_WORDS } from './cautions.ts';
import { DESK_WORDS } from './desk.ts';
import { INTERFACE_WORDS } from './interface.ts';
import { LESSON_WORDS } from './lesson.ts';
import { PLACE_WORDS } from './place.ts';
import { STORY_WORDS } from './story.ts';
import { WAY_WORDS } from './ways.ts';
import { YARD_WORDS } from './yard.ts';

/** Every message, ICU MessageFormat; the trade words of the vocabulary fill themselves in. */
export const CATALOGUE = {
  ...PLACE_WORDS,
  ...WAY_WORDS,
  ...STORY_WORDS,
  ...CAUTION_WORDS,
  ...LESSON_WORDS,
  ...INTERFACE_WORDS,
  ...DESK_WORDS,
  ...YARD_WORDS,
} as const;

/** The key of one message. */
export type WordKey = keyof typeof CATALOGUE;
