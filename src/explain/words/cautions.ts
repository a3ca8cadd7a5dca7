/** Said wherever somebody could act on a result. */
export const CAUTION_WORDS = {
  'caution.model': 'A teaching model with typical data: a real installation differs, and so does every person.',
  'caution.measure':
    'Never test any of this on a live installation. Isolate, lock off and prove dead before you touch.',
  'caution.codes': 'What must be done is said by {codes}; the work is for {electrician}.',
  'caution.shock': 'After any electric shock see a doctor, even if nothing seems wrong.',
  'caution.steel':
    'Steel conduit and armour are reckoned at the least they can have: a large fault current meets more, so less flows and what should open may open later or not at all. Measure the loop.',
  'caution.steady':
    'Reckoned with steady alternating current; the first half cycle can be higher. Breaker bands are typical, not those of one maker.',
} as const;
