import type { Region } from '../installation/index.ts';

/** The trade's two languages: North American and IEC. */
export type Vocabulary = Region;
