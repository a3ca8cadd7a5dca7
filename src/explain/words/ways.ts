/** What the ways home are called in the ledger. */
export const WAY_WORDS = {
  'way.protective': '{Protective}',
  'way.neutral': 'Neutral',
  'way.link': 'Neutral, over the link to the case',
  'way.soil': 'Soil, from the {name}',
  'way.feet': 'Soil, from the feet of the {name}',
  'way.pipe': 'Water pipe',
  'way.pipe.soil': 'Water pipe and soil',
  'way.person': 'Through the {name}',
  'way.person.feet': 'Through the {name}, hand to feet',
  'way.person.hands': 'Through the {name}, hand to hand',
  'way.relief': 'In place of what the {name} took',
  'way.load': 'Through other loads',
  'way.legs': 'Through the other {leg}',
  'way.other': 'Insulation and everything smaller',
} as const;
