/** What a learner did, kept on this computer over a reload. */
export { openRecords } from './records.ts';
export type { Kept, Records } from './records.ts';
