/** The sentences of an account. Each is filled from one finding. */
export const STORY_WORDS = {
  'story.working': 'In ordinary work {amperes} leaves the winding, for {loads}.',
  'story.working.legs': 'In ordinary work the winding gives {one} on one {leg} and {other} on the other, for {loads}.',
  'story.working.load.both': 'the {part} ({amperes}, across both)',
  'story.working.load': 'the {part} ({amperes})',
  'story.working.off': 'Nothing is running, so next to no current leaves the winding.',
  'story.reversed':
    '{sentence}: what is plugged in there is switched in its neutral, and switched off its inside stays live.',
  'story.stray': 'Without any fault, {amperes} of the working current comes home {where}.',
  'story.working.shorted': 'As it is wired, {amperes} leaves the winding, and no load is in the way of most of it.',
  'story.stray.shorted': 'The wiring itself is a short circuit: {amperes} goes home {where}.',
  'story.stray.fault': 'The touch gives the working current another road: {amperes} of it now comes home {where}.',
  'story.legs':
    'The two halves of the supply no longer share evenly: {low} on one {leg}, {high} on the other, where {nominal} belongs on each.',

  'story.load.volts': 'The {part} gets {volts}, where it is built for {nominal}.',
  'story.leakage':
    'Without any fault, {amperes} leaves by the capacitance of filters and cables and does not come back on the neutral: {parts}.',
  'story.leakage.more': '{more, plural, one {one more} other {# more}}',
  'story.harmonics':
    'The neutral of the {part} carries {amperes}, {harmonic} of it at multiples of the supply’s frequency; the line beside it that carries most has {line}.',
  'story.harmonics.more':
    'The neutral of the {part} carries {amperes}, more than any line beside it ({line}): {harmonic} is at multiples of the supply’s frequency, and every third of those adds in the neutral instead of cancelling.',

  'story.fault': '{sentence}: {amperes} flows, as much as {volts} drives round a loop of {ohms}.',
  'story.fault.divert':
    '{sentence}. What touches stands at no more than the neutral’s own volts, so only working current turns aside: {amperes}.',
  'story.fault.none': '{sentence}, but next to no current flows: there is no way home for it.',
  'story.fault.unearthed': '{sentence}, but next to no current flows: nothing ties this supply to the {ground}.',
  'story.fault.quiet':
    '{sentence}, but next to no current flows: what touches stands at no more than the neutral’s own volts.',
  'story.way.whole': '{amperes} goes home this way, {way}: {hops}.',
  'story.way.relief': '{amperes} of it only stands in for what the {part} took before: {hops}.',
  'story.way.part': '{amperes} of it goes home this way, {way}: {hops}.',

  'story.sees.magnetic': 'The {device} carries {amperes}, {multiple} times its {rating}: its magnetic part must act.',
  'story.sees.band':
    'The {device} carries {amperes}, {multiple} times its {rating}: one of its kind opens in {earliest}, another only after {latest}.',
  'story.sees.band.never':
    'The {device} carries {amperes}, {multiple} times its {rating}: one of its kind opens in {earliest}, another never.',
  'story.sees.thermal':
    'The {device} carries {amperes}, {multiple} times its {rating}: only its heat counts, and that takes between {earliest} and {latest}.',
  'story.sees.none': 'The {device} carries {amperes}; it is built to carry {rating} as long as you like.',
  'story.sees.between':
    'The {device} carries {amperes}, {multiple} times its {rating}: it may open in the end, and need not.',
  'story.sees.residual':
    'The {device} compares what goes out with what comes back: {residual} does not come back. From {rating} it must act.',
  'story.sees.residual.may':
    'The {device} compares what goes out with what comes back: {residual} does not come back. It may act, but must only from {rating}.',
  'story.sees.residual.none':
    'The {device} compares what goes out with what comes back: {residual} does not come back, too little to act on.',

  'story.sees.melting':
    'The {device} carries {amperes}, {multiple} times its {rating}: it melts, and is clear between {earliest} and {latest}.',
  'story.sees.long-time':
    'The {device} carries {amperes}, {multiple} times its {rating}: its long-time element counts, and opens it between {earliest} and {latest}.',
  'story.sees.published':
    'The {device} carries {amperes}, {multiple} times the {rating} it holds: by its sheet it opens within {latest}.',
  'story.sees.short-time':
    'The {device} carries {amperes}, {multiple} times its {rating}: its short-time element waits, and opens it between {earliest} and {latest}.',
  'story.sees.ground-fault':
    'The {device} adds up what passes through it: {residual} does not come back. From {rating} its ground-fault element acts, between {earliest} and {latest}.',
  'story.sees.grounded-neutral':
    'The {device} drives a small voltage of its own round its conductors and finds a loop of only {ohms}: downstream the neutral touches {ground}.',

  'story.operated.magnetic': 'The {device} opens after {time}, by its magnetic part.',
  'story.operated.thermal':
    'The {device} opens after {time}, by heat; another of its kind takes between {earliest} and {latest}.',
  'story.operated.thermal.maybe':
    'The {device} opens after {time}, by heat; another of its kind opens in {earliest}, and another never.',
  'story.operated.melting':
    'The {device} melts and is clear after {time}; another of its kind takes between {earliest} and {latest}.',
  'story.operated.long-time': 'The {device} opens after {time}, by its long-time element.',
  'story.operated.published': 'The {device} opens after {time}; its sheet allows it up to {latest}.',
  'story.operated.published.maybe': 'The {device} opens after {time}; by its sheet another of its kind may stay shut.',
  'story.operated.short-time': 'The {device} opens after {time}, when its short-time element has waited.',
  'story.operated.ground-fault':
    'The {device} opens after {time}, by its ground-fault element: {residual} does not come back.',
  'story.operated.grounded-neutral':
    'The {device} opens after {time}: its own detector finds the neutral linked to {ground} downstream, load or no load.',
  'story.operated.others': '{operated} The {others} may open first, or with it: nothing makes one wait for the other.',
  'story.operated.others.above':
    '{operated} The {others} may open first, or with it: only up to {limit} is this one sure to open alone.',
  'story.warned':
    'The {device} warns after {time}: it reads {ohms} between the system and {ground}, and is set to {threshold}. It opens nothing; what it found wants mending before a fault comes on top.',
  'story.conductor.limit':
    'Carrying {amperes}, the {conductor} of the {part} is at the end of what its insulation stands after {time} (I²t = k²S², heated without loss).',
  'story.conductor.melts':
    'Carrying {amperes}, the {conductor} of the {part} is at the end of what its insulation stands after {time} (I²t = k²S², heated without loss), and by {melts} it would burn open; it is kept whole here.',
  'story.operated.residual': 'The {device} opens after {time}, because of what does not come back.',
  'story.operated.none': 'The {device} opens after {time}.',

  'story.time.inside':
    'That ends it inside the {limit} that IEC 60364-4-41 (table 41.1, {earthing}) allows a final circuit at {nominal}.',
  'story.time.outside':
    'It ends after {time}; IEC 60364-4-41 (table 41.1, {earthing}) allows a final circuit at {nominal} no more than {limit}.',
  'story.time.never':
    'Nothing ends it; IEC 60364-4-41 (table 41.1, {earthing}) allows a final circuit at {nominal} no more than {limit}.',

  'story.shut.below-rating':
    'The {device} stays shut: {amperes} is no more than it is built to carry. It counts amperes, not danger.',
  'story.shut.may-not':
    'The {device} stays shut: {amperes}, {multiple} times its {rating}, lies where it may act or may not.',
  'story.shut.too-late': 'The {device} stays shut for the whole time looked at: {amperes} would need {time}.',
  'story.shut.jammed': 'The {device} is jammed: it carries {amperes} and cannot open, whatever flows.',
  'story.shut.jammed.overload':
    'The {device} is jammed: it carries {amperes} and cannot open, whatever flows. No cable of its circuit is built to carry this for long: it overheats and can burn.',
  'story.shut.jammed.residual': 'The {device} is jammed: {residual} does not come back and it cannot open.',
  'story.shut.not-fitted': 'No {device} is fitted. One would have seen that {residual} does not come back, and opened.',
  'story.shut.not-fitted.neutral':
    'No {device} is fitted. One would have found the neutral linked to {ground} downstream, and opened.',
  'story.shut.not-fitted.may':
    'No {device} is fitted. One would have seen that {residual} does not come back, and might have opened.',
  'story.shut.not-fitted.none':
    'No {device} is fitted. Only {residual} does not come back, too little for one to act on.',
  'story.shut.balanced':
    'The {device} stays shut: what goes out through it comes back through it, so it has nothing to act on.',
  'story.shut.below-threshold':
    'The {device} stays shut: only {residual} does not come back, and it need not act below {rating}.',
  'story.load': 'The {part} works on at {amperes}: nothing in its running shows that anything is wrong.',
  'story.load.weak':
    'The {part} gets only {amperes}, at {percent} of the volts it is built for: it stands still or labours.',
  'story.load.much': 'The {part} gets {amperes}, at {percent} of the volts it is built for: it can burn out.',
  'story.load.off': 'The {part} is off, so nobody would look for anything wrong.',

  'story.live.until': 'The {metal} stands at {volts} {above} for {time}.',
  'story.live.stays': 'The {metal} stands at {volts} {above}, and stays there.',
  'story.live.normal': 'In ordinary work already, the {metal} stands at {volts} {above}.',
  'story.live.still': 'Even so the {metal} still stands at {volts} {above}.',

  'story.person.feels': '{Person}, {path}, has {touch} {across}, and {amperes} passes for {time}: {effect}.',
  'story.person.feels.ever': '{Person}, {path}, has {touch} {across}, and {amperes} passes with no end: {effect}.',
  'story.person.gets': '{Person}, {path}, has {touch} {across}, and {amperes} passes.',
  'story.person.away': 'Nobody is touching anything.',
  'story.person.no-current': '{Person} feels nothing: no current to speak of passes.',
  'story.person.imperceptible':
    '{Person} feels nothing: {amperes} is below what people perceive ({least}, IEC 60479-1).',
  'story.person.released': '{Person} can let go, and does.',
  'story.person.held':
    '{amperes} through the hand is more than the {most} at which everybody can still let go (IEC 60479-1): {person} may be held for {time}.',
  'story.person.held.ever':
    '{amperes} through the hand is more than the {most} at which everybody can still let go (IEC 60479-1): {person} may be held until somebody cuts the supply.',
  'story.zone': 'By {time} {person} has come to zone {zone} of IEC 60479-1: {effect}.',
  'zone.AC-1': 'hardly to be felt',
  'zone.AC-2': 'a clear jolt that startles, normally without harm',
  'zone.AC-3': 'muscles cramp and breathing is hard, normally without lasting harm',
  'zone.held':
    'muscles cramp and breathing is hard, and the longer it lasts the worse it gets; it can kill whoever is not freed',
  'zone.held.breath': 'muscles cramp and breathing can stop, and the longer it lasts the likelier it is to kill',
  'zone.AC-4.1': 'the heart can lose its rhythm, in up to about 5 of 100 people',
  'zone.AC-4.2': 'the heart can lose its rhythm, in up to about half of all people',
  'zone.AC-4.3': 'the heart can lose its rhythm, in more than half of all people',
  'zone.DC-1': 'a slight prick at most, when it is switched',
  'zone.DC-2': 'a jolt when it begins and ends, normally without harm',
  'zone.DC-3': 'strong cramps and a heart disturbed, normally without lasting harm',
  'zone.DC-4.1': 'the heart can lose its rhythm, in up to about 5 of 100 people',
  'zone.DC-4.2': 'the heart can lose its rhythm, in up to about half of all people',
  'zone.DC-4.3': 'the heart can lose its rhythm, in more than half of all people',
  'zone.held.chest': '{effect}; the chest muscles are held too, and breathing stops after minutes',
  across: 'across the body',
  'across.hands': 'from hand to hand',
  'across.feet': 'from hand to feet',
  'path.hand-feet': 'hand to feet',
  'path.hand-hand': 'hand to hand',
  'path.hand-hand-feet': 'one hand to the other and to the feet',
  'path.feet': 'one foot to the other',
  'path.trunk': 'through the trunk',
  'path.touch': 'in touch with it',
  'path.holding': 'holding {person}, {path}',

  'story.state.fault.metal': 'The fault state: metal leads all the way home for {percent} of the fault current.',
  'story.state.fault.poor': 'The fault state: metal leads all the way home for only {percent} of the fault current.',
  'story.state.fault.soil':
    'The fault state: no metal leads all the way home. Soil is what is left, and it lets too little through for what counts amperes.',
  'story.state.fault.leak':
    'The fault state: no metal leads all the way home, only the capacitance of what is live against earth.',
  'story.state.fault.none': 'The fault state: the metal is live and nothing leads home from it.',
  'story.state.normal.clean': 'The normal state: no current flows where none belongs.',
  'story.state.normal.stray': 'The normal state: {amperes} flows where none belongs.',

  'story.safe.already': 'As it is built it meets this fault: what should open opens in time, or no metal stays live.',
  'story.safe.shock': 'As it is built nobody is in danger of a shock from this fault, and yet not all is well.',
  'story.safe.by': 'This change alone would have made it safe: {change}.',
  'story.kept.by': 'This change alone would have kept {person} out of danger: {change}.',
  'story.kept.by.metal': 'This change alone would have kept metal from staying live: {change}.',
  'story.safe.then': 'Then the {device} opens in {time}.',
  'story.safe.quiet': 'Then no metal stays live and no current strays.',
  'story.safe.dead': 'Then no metal stays live.',
  'story.left.flow': '{amperes} flows on through the fault with no end, and makes {watts} of heat there.',
  'story.left.flow.cool': '{amperes} flows on through the fault with no end.',
  'story.safe.first':
    'As it is built this first fault endangers nobody: {amperes} flows and nothing need open. It wants finding before a second one comes.',
  'story.left.late':
    '{amperes} flows through the fault for {time}, longer than the {limit} of IEC 60364-4-41 (table 41.1), and makes {watts} of heat there.',
  'story.left.size':
    'The {device}, {rating} where its circuit is built for {built}, no longer guards its cable: overloaded, the cable can burn before anything opens.',
  'story.left': 'Still to be put right: {defects}.',
  'story.safe.none':
    'No single one of the {tried, plural, one {repair} other {# repairs}} tried makes this safe: more than one thing is the matter. All of them together do.',
  'story.safe.none.fault':
    '{tried, plural, one {The repair tried does not make this safe} other {None of the # repairs tried makes this safe, nor all of them together}}: the fault itself has to be mended.',

  'headline.opens': 'The {device} opens in {time}',
  'headline.opens.late': 'The {device} opens only after {time}',
  'headline.opens.late.held': 'The {device} opens only after {time}; until then {person} may be held',
  'headline.opens.still': 'The {device} opens in {time}, and still the {metal} stays at {volts}',
  'headline.opens.shorted': 'The {device} opens in {time}: the wiring itself is a short circuit',
  'headline.opens.faultless': 'The {device} opens in {time}, with no fault at all',
  'headline.held': 'Nothing opens, and {person} may be held by {amperes}',
  'headline.live': 'Nothing opens, and the {metal} stays at {volts}',
  'headline.live.more': 'Nothing opens, and the {metal} stays at {volts}, with it {others}',
  'above.floor': 'above the floor',
  'above.earth': 'against remote {ground}',
  'the.part': 'the {part}',
  'headline.legs.stay': 'Nothing opens, and one {leg} gets {high}, the other {low}',
  'headline.warned': 'The {device} warns; nothing opens, and {amperes} comes home',
  'headline.warned.faultless': 'No fault, and yet the {device} warns',
  'headline.leak': 'Nothing opens: {amperes} comes home unnoticed',
  'headline.harmless': 'Nothing opens, and nothing is live that should not be',
  'headline.shock': 'No fault, and yet {amperes} passes through {person}',
  'headline.case': 'No fault, and yet the {metal} stands at {volts}',
  'headline.legs': 'One {leg} gets {high}, the other {low}',
  'headline.load.volts': 'The {part} gets {volts}, where {nominal} belongs',
  'headline.harmonics': 'The neutral of the {part} carries {amperes}, its lines no more than {line}',
  'headline.stray': 'No fault, and yet {amperes} flows where none belongs',
  'headline.latent': 'Nothing shows yet',
  'headline.normal': 'Everything is as it should be',

  'why.magnetic':
    '{amperes} is {multiple} times what the {rating} {device} is built for, so its magnetic part acts at once.',
  'why.thermal':
    '{amperes} is {multiple} times what the {rating} {device} is built for: too little for its magnetic part, so it opens by heat.',
  'why.melting': '{amperes} is {multiple} times what the {rating} {device} is built for, so it melts.',
  'why.long-time':
    '{amperes} is {multiple} times what the {rating} {device} is set to: its long-time element opens it.',
  'why.published': '{amperes} is {multiple} times what the {rating} {device} holds.',
  'why.short-time':
    '{amperes} is {multiple} times what the {rating} {device} is set to: its short-time element waits a set time, then opens.',
  'why.ground-fault':
    'The {device} adds up what passes through it: {residual} does not come back; from {rating} its ground-fault element acts.',
  'why.grounded-neutral':
    'The {device} looks for a neutral linked to {ground} downstream: a loop of {ohms} is such a link, with or without a load.',
  'why.residual': 'The {device} sees that {residual} of what went out does not come back; from {rating} it must act.',
  'why.metal': 'Metal leads all the way home to the winding, so the current is large.',
  'why.metal.jammed':
    'Metal leads all the way home, and {amperes} flows: enough to open the {device} at once, if it could open.',
  'why.soil':
    'No metal leads all the way home. The current has to take the soil, and soil lets only {amperes} through.',
  'why.leak':
    'No metal leads all the way home. The current can only return through the capacitance of what is live against earth, and that passes {amperes}.',
  'why.body': 'No metal leads all the way home. What current there is, {amperes}, has to go through a body.',
  'why.body.soil':
    'No metal leads all the way home. What current there is, {amperes}, has to go through a body and the soil.',
  'why.person': '{amperes} passes through {person} for {time}: {effect}.',
  'why.person.ever': '{amperes} passes through {person}, and nothing ends it: {effect}.',
  'why.poor': 'Something in the loop holds the current down to {amperes}.',
  'why.none': 'The current finds no way home, so the metal simply takes on the volts of the {line}.',
  'why.quiet': 'What touches stands at no more than the neutral’s own volts, so next to nothing drives a current.',
  'why.unearthed':
    'Nothing ties this supply to the {ground}, so a first fault closes no circuit. It ties one conductor down, though: whoever touches another has the whole voltage, and a second fault is a short circuit.',
  'why.divert': 'The touch only gives the working current another road, so nothing large flows.',
  'why.harmonics':
    'Currents at three times the frequency, and at every multiple of that, are in step in all phases: they add in the neutral. No breaker stands in the neutral to see it.',
  'why.normal.out': '{amperes} leaves the winding and comes home on its own conductors.',
  'why.normal.case': 'No current flows where none belongs, and no metal is live.',
  'why.latent': 'With no fault it changes nothing that anybody would notice, so it can wait for years.',
  'why.stray.device':
    'No breaker looks for this, and whoever opens that joint stands between the two ends of a working circuit.',
  'why.legs':
    'The neutral no longer holds the middle, so the two halves share the whole voltage as their loads divide it.',
  'why.legs.high': 'The half with less running gets the more volts, and what is plugged in there can burn out.',
  'why.case':
    'A working conductor is in touch with that metal, and nothing brings the metal back to the volts of the floor.',

  'where.protective': 'on the {protective}',
  'where.neutral': 'on the neutral',
  'where.soil': 'through the soil',
  'where.pipe': 'over the {part}',
  'where.person': 'through a person',
  'where.load': 'through other loads',
  'where.other': 'over a cable’s screen',
} as const;
