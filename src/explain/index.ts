export type { Finding, ShutBecause, WayKind } from './finding.ts';
export type { Ledger, WayHome } from './ledger.ts';
export type { Account, StoryLine, Vocabulary } from './account.ts';
