/** What a branch is for in the installation. */
export type Role =
  | 'winding'
  | 'line'
  | 'neutral'
  | 'protective'
  | 'bond'
  | 'load'
  | 'fault'
  | 'electrode'
  | 'pipe'
  | 'link'
  | 'person'
  | 'floor'
  | 'device'
  | 'insulation';

/** What the current flows through. */
export type Medium = 'metal' | 'soil' | 'body' | 'load' | 'insulation';
