/** Words of sweeps and crowds. They are fetched with the panel that shows them. */
export const SWEEP_WORDS = {
  value: 'Value',
  from: 'from',
  to: 'to',
  steps: 'steps',
  run: 'Run it over the range',
  cancel: 'Cancel',
  progress: 'Done so far',
  failed: 'That cannot be: {reason}',
  opens: 'Opens after',
  never: 'never',
  fault: 'Fault current',
  metal: 'Metal',
  body: 'Body',
  zone: 'Zone',
  safe: 'Safe',
  yes: 'yes',
  no: 'no',
  caption: 'The same conditions, with {path} from {from} to {to}',

  crowd: 'Let a million people touch it',
  'crowd.none': 'Nothing strikes here, so nobody is exposed.',
  'crowd.caption': '{people} people touch the {part}, at {volts} to remote earth',
  'crowd.note':
    'Each with a body, skin, contact, shoes, floor and time of their own; shares invented, bodies and zones after IEC 60479-1. Nothing here says that a touch is safe.',
  'crowd.share': 'Share',
  'crowd.held': 'could not let go',
  'crowd.below': '{share} stay below',
} as const;

/** The key of one of them. */
export type SweepKey = keyof typeof SWEEP_WORDS;
