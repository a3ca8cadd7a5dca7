/** Words of the lane: what each place shows, in one line. */
export const YARD_WORDS = {
  'mode.yard': 'The yard',
  'yard.heading': 'Kestrel Yard',
  'yard.intro': 'One lane, eight supplies. In each of them current goes home to its source. Where will you look?',
  'yard.lane': 'The lane, from the substation to the boat shed',
  'yard.bakery': 'Two legs and a neutral: why a breaker opens, or does not.',
  'yard.joinery': 'Three phases, a feeder, and one bond too many.',
  'yard.office': 'A transformer of its own, and a bond that belongs to it.',
  'yard.flat': 'Neutral and earth in one wire, until that wire is lost.',
  'yard.clinic': 'No winding end is earthed: a first fault stops nothing.',
  'yard.stall': 'A generator of its own: where is home now?',
  'yard.pump': 'Only soil leads home: too little for a breaker.',
  'yard.pontoon': 'Shore supply by the water: what a hull may be joined to.',
} as const;
