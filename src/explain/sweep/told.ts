import { filled, type WordValues } from '../say.ts';
import type { Vocabulary } from '../vocabulary.ts';
import { SWEEP_WORDS, type SweepKey } from '../words/sweep.ts';

/** One message of the panel of sweeps and crowds. */
export function saySweep(key: SweepKey, vocabulary: Vocabulary, values?: WordValues): string {
  return filled(SWEEP_WORDS[key], vocabulary, values);
}
