import type { Role } from './role.ts';

/** What a core of a cable is for, by its name. `PEN` is neutral and protective in one: its daily duty is the neutral's, so it
 *  counts as one. A screen between two buildings ties their earths together whether anybody wants it or not. */
export function coreRole(core: string): Extract<Role, 'line' | 'neutral' | 'protective' | 'bond'> {
  switch (core) {
    case 'neutral':
    case 'PEN':
      return 'neutral';
    case 'protective':
    case 'armour':
    case 'conduit':
    case 'raceway':
      return 'protective';
    case 'screen':
      return 'bond';
    default:
      return 'line';
  }
}

/** Whether a core may end free without a word: a protective one as on a load without a metal case, armour and screens as
 *  earthed at one end. Any other unused core is left out of the file. */
export function mayEndFree(core: string): boolean {
  return coreRole(core) === 'protective' || coreRole(core) === 'bond';
}
