/** Words of the smallest repair. They are fetched when it is asked for. */
export const REPAIR_WORDS = {
  heading: 'What would put it right',
  nothing: 'Every rule holds as it stands: nothing needs repair.',
  broken: 'As it stands',
  'rule.ended': 'The fault is not ended in time.',
  'rule.no-lethal-touch': 'Somebody can be killed, or held without end.',
  'rule.ordinary-work': 'In ordinary work already current flows, or metal is live, where neither belongs.',
  'rule.even-halves': 'The halves of the supply do not share evenly.',
  'rule.protected': 'A conductor is not protected: its device is too large for it, or cannot open.',
  'rule.withstand': 'A conductor is hotter than its insulation stands before the fault is ended.',
  'rule.polarity': 'Line and neutral are exchanged.',

  sets: '{count, plural, one {One repair makes every rule hold, and nothing less does:} other {Each of these # makes every rule hold, and nothing less does:}}',
  none: '{offered, plural, =0 {This place offers no repair.} one {The one repair this place offers does not make every rule hold.} other {None of the # repairs this place offers, alone or together, makes every rule hold.}} The fault itself has to be mended.',
  'none.most':
    'No set of up to {most} of the {offered} repairs this place offers makes every rule hold. Larger sets were not tried.',
  'do.conductor': '{cable}: conductors of {size}',
  together: '{first}, and with it: {rest}',

  tempting: 'Tempting, and not enough',
  'tempting.rod':
    'One more {rod} at the {part}: {ohms} lets {amperes} into the soil, and the metal still stands at {volts}. To a {rating} {breaker} that is as good as nothing.',
  'tempting.bigger-breaker':
    'A bigger {breaker}: at {larger} the {device} {ends, select, never {would never open} other {would open only after {later}}}, and nothing would guard the wire behind it. A larger rating never helps a fault current: it asks for more of it.',
  'tempting.residual-device.back':
    'A {residual}: what goes out through it comes back through it, so it has nothing to act on.',
  'tempting.residual-device.touch':
    'A {residual}: nothing is missing until somebody touches the live metal. It cuts that shock short, and does not spare it.',
  'tempting.residual-device.little': 'A {residual}: only {missing} does not come back, too little for it to act on.',

  caution:
    'What this place offers was tried, nothing else. The fault itself must be mended too; the work is for {electrician}.',
} as const;

/** The key of one of them. */
export type RepairKey = keyof typeof REPAIR_WORDS;
