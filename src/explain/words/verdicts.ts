/** Words of the designer's verdicts. They are fetched with the table that shows them, not with the first view. */
export const VERDICT_WORDS = {
  heading: 'What a designer asks',
  note: 'For a bolted fault at each point, loads off. Faults and people among the conditions are set aside.',
  where: 'Where',
  what: 'What',
  value: 'It is',
  limit: 'Limit',
  margin: 'Left over',
  judged: 'Verdict',
  clauses: 'Where the limits come from',
  none: 'Nothing here is fed, so there is nothing to judge.',
  sum: '{no, plural, =0 {Every limit is met} one {One limit is not met} other {# limits are not met}}{maybe, plural, =0 {.} one {, and one depends on where in its band the device lies.} other {, and # depend on where in its band the device lies.}}',

  'holds.yes': 'met',
  'holds.maybe': 'may be met',
  'holds.no': 'not met',
  'holds.told': '',
  'at.most': 'at most {limit}',
  'at.least': 'at least {limit}',
  never: 'never',
  unlimited: 'none',
  times: '{times} ×',

  'kind.fault-to-metal': 'Fault current, {line} to metal',
  'kind.fault-to-neutral': 'Fault current, {line} to neutral',
  'kind.fault-between-lines': 'Fault current between lines',
  'kind.second-fault': 'Current of a second fault, in the {other}',
  'kind.loop.second': 'Loop of both faults, with the {other}',
  'kind.disconnection.second': 'Second fault ended by the {device} in',
  'kind.disconnection.nobody.second': 'Second fault ended in',
  'kind.case-volts.second': 'Metal meanwhile, at two faults',
  'kind.monitor': 'First fault told by the {device} within',
  'kind.monitor.nobody': 'First fault told within',
  'kind.loop': 'Loop of the fault',
  'kind.disconnection': 'Ended by the {device} in',
  'kind.disconnection.nobody': 'Ended in',
  'kind.case-volts': 'Metal meanwhile, above the floor',
  'kind.longest-run': 'Length of the cable',
  'kind.protective-size': 'Section of the {protective}',
  'kind.overload': 'The {device} before {size}',
  'kind.grounding-current': 'Working current off its wires',

  'clause.loop.iec':
    'Loop: 95 % of the volts to {ground} must drive the current at which the device surely opens in time (IEC 60364-4-41, 411.4.4; 95 % after BS 7671).',
  'clause.loop.tt':
    'Loop of a TT supply: a residual device must act before metal stands at 50 V; a device that counts overcurrent is held to the supply’s own volts (IEC 60364-4-41, 411.5).',
  'clause.loop.it':
    'Loop of two faults, both circuits together: the volts between the two conductors, 95 % of them, must drive the current at which this device surely opens in time. With equal circuits that is 411.6.4 of IEC 60364-4-41: half of the volts between lines, or of those to neutral where it is distributed.',
  'clause.loop.north-america':
    'Loop: an effective fault path lets through enough to operate the device at once; here the current at which every device of its kind does (NFPA 70, 250.4(A)(5)). The code gives no ohms.',
  'clause.time.tn': 'Time: IEC 60364-4-41, table 41.1, TN; 5 s for circuits that feed others.',
  'clause.time.tt': 'Time: IEC 60364-4-41, table 41.1, TT; 1 s for circuits that feed others.',
  'clause.time.it':
    'Time: an unearthed supply whose metal is bonded is held to the times of TN (IEC 60364-4-41, 411.6).',
  'clause.time.it.apart':
    'Time: an unearthed supply whose metal only soil joins is held to the times of TT at its second fault (IEC 60364-4-41, 411.6.4).',
  'clause.time.north-america':
    'Time: the code gives none; “at once” is counted here as within 100 ms, the instantaneous part of the device.',
  'clause.touch':
    'Metal may stand above 50 V only while the fault is being ended (IEC 60364-4-41, 411.3.2). While it is, it is as dangerous as its volts.',
  'clause.touch.first':
    'A first fault on an unearthed supply need not be ended while metal stands at no more than 50 V: R·I ≤ 50 V (IEC 60364-4-41, 411.6.2).',
  'clause.monitor':
    'A first fault must be told, or nobody mends it before the second: insulation monitor (IEC 60364-4-41, 411.6.3), ground detector (NFPA 70, 250.21).',
  'clause.run': 'Length: the longest at which this loop still ends the fault in time, all else as it is.',
  'clause.protective.adiabatic':
    'Section: what stays below its limit of heat until the device opens, S = I·√t / k (IEC 60364-5-54, 543.1.2).',
  'clause.protective.table': 'Section: by the section of the line (IEC 60364-5-54, table 54.2).',
  'clause.protective.north-america': 'Section: by the rating of the device before it (NFPA 70, table 250.122).',
  'clause.overload.iec':
    'Rating: what the cable carries clipped to a wall (IEC 60364-5-52, table B.52.2, method C, two loaded conductors); bundles and heat allow less.',
  'clause.overload.north-america':
    'Rating: what the conductor carries at 60 °C (NFPA 70, table 310.16, 240.4); 75 °C terminals allow more, bundles and heat less.',
  'clause.grounding':
    'In ordinary work no current belongs on the {protective}, on pipes or in soil, no objectionable current (NFPA 70, 250.6); told here from 10 mA.',
  'clause.none': '',

  caution:
    'Typical data and published tables, not this installation. A limit met here is no proof: measure, and let {electrician} judge by {codes}.',
} as const;

/** The key of one of them. */
export type VerdictKey = keyof typeof VERDICT_WORDS;
