/** Figures that two sources print differently: the one taken is a row of the tables, the other one stands here with the reason. */
export interface Disagreement {
  /** The claim of the row that is taken, as it stands there. */
  readonly taken: string;
  /** What the other source prints, in the same unit. */
  readonly other: number;
  /** The other source and how it was seen. */
  readonly otherSource: string;
  /** Why the one is taken and the other is not. */
  readonly because: string;
}

const OLD_BODY = 'IEC 479-1:1984, kept in 1994, from memory';
const NEWER = 'The later table rests on more measurements and lets more current through, the careful side.';
const SWAPPED = 'IEC 60228 adds up to the one that is taken; the other looks like a row moved by one.';
const GATE =
  'A gate of IEC 60269-1 is the slowest that may be sold; fuses to BS 88 are quicker. The gate is the careful side.';

export const disagreements: readonly Disagreement[] = [
  {
    taken: '50 % of people have no more hand to hand at 100 V, dry, large contact',
    other: 1875,
    otherSource: OLD_BODY,
    because: NEWER,
  },
  {
    taken: '50 % of people have no more hand to hand at 1000 V, dry, large contact',
    other: 1050,
    otherSource: OLD_BODY,
    because: `${NEWER} The older one had not reached its own asymptote there.`,
  },
  {
    taken: 'curve c1 for long',
    other: 30,
    otherSource: 'pages of the trade that call 30 mA the dangerous line',
    because: '30 mA is the rating of a device (IEC 61008), not a boundary of IEC 60479-1.',
  },
  {
    taken: 'curve c1 at 5 s',
    other: 51.9,
    otherSource: 'Dalziel’s 116/√t at 5 s (Dalziel and Lee, 1968), computed by hand',
    because: 'Beyond a few seconds the law was never meant; zones follow the standard, and Dalziel stands beside them.',
  },
  {
    taken: 'curve c1 at 10 ms',
    other: 1160,
    otherSource: 'Dalziel’s 116/√t at 10 ms, computed by hand',
    because: 'The standard is lower, the careful side; zones follow it.',
  },
  {
    taken: 'everybody can let go of this',
    other: 10,
    otherSource: 'IEC 479-1:1994, adults, from memory; Dalziel has 9 mA for men and 6 mA for women',
    because: 'From 2005 on the curve is for everybody, children included.',
  },
  {
    taken: 'a class A device opens within 5.5939 s at 6 mA',
    other: 0.025,
    otherSource: 'pages of the trade: "25 ms at 6 mA"',
    because: 'UL 943 has T = (20/I)^1.43: 25 ms belongs to 264 mA.',
  },
  {
    taken: 'the slowest B16, warm from 1.13 times, opens at 1.45 within 3600 s',
    other: 7200,
    otherSource: 'a mailing list, seen second-hand',
    because: 'Two hours are for ratings above 63 A only (IEC 60898-1). A maker’s page with 0.1 s is a misprint of 1 h.',
  },
  {
    taken: 'an S type RCD takes at least 0.06 s at 2 IΔn',
    other: 0.05,
    otherSource: 'the manual of one tester, seen second-hand',
    because: 'Table 1 of IEC 61008-1 has 0.06 s; both are from memory or second-hand.',
  },
  {
    taken: 'behind B 32 A at 230 V the loop has at most 1.37 Ω',
    other: 1.44,
    otherSource: 'BS 7671:2008 table 41.3, without C_min, seen second-hand',
    because: 'The later edition counts on 0.95 of the voltage, the careful side.',
  },
  ...(
    [
      [16, 3.36, 4],
      [20, 2.57, 2.8],
      [25, 1.99, 2.2],
      [32, 1.46, 1.7],
      [63, 0.683, 0.78],
      [100, 0.377, 0.42],
    ] as const
  ).map(([rating_A, gate, other]) => ({
    taken: `gG ${rating_A} A blows within 5 s up to a loop of ${gate} Ω at 230 V`,
    other,
    otherSource: `BS 7671:2018 for fuses to BS 88, seen second-hand${rating_A === 32 ? ' (another page: 2.10)' : ''}`,
    because: GATE,
  })),
  {
    taken: 'a line of 2.5 mm² with a protective conductor of 2.5 mm² has 14.82 mΩ/m',
    other: 18.1,
    otherSource: 'lists on pages of the trade, seen second-hand',
    because: SWAPPED,
  },
  {
    taken: 'a line of 4 mm² with a protective conductor of 2.5 mm² has 12.02 mΩ/m',
    other: 12.9,
    otherSource: 'lists on pages of the trade, seen second-hand',
    because: SWAPPED,
  },
  {
    taken: 'a line of 6 mm² with a protective conductor of 4 mm² has 7.69 mΩ/m',
    other: 8.4,
    otherSource: 'lists on pages of the trade, seen second-hand',
    because: SWAPPED,
  },
  {
    taken: 'a line of 10 mm² with a protective conductor of 6 mm² has 4.91 mΩ/m',
    other: 5.2,
    otherSource: 'lists on pages of the trade, seen second-hand',
    because: SWAPPED,
  },
  {
    taken: '1/0 AWG Cu in aluminium conduit has 0.13 Ω/kft, a.c.',
    other: 0.12,
    otherSource: 'a third copy of NFPA 70 chapter 9 table 9',
    because: 'Two copies of three have 0.13, which the rows above and below fit.',
  },
  {
    taken: 'a rod of 16 mm × 3 m in 100 Ω·m has 33.5 Ω',
    other: 36.1,
    otherSource: 'a page that has ln(4L/d) without the 1 that is taken off',
    because: 'Dwight has ln(4L/a) − 1 with the radius a; mixing radius and diameter is the commonest error with it.',
  },
  {
    taken: '2500 Ω·m, 0.102 m thick, on 400 Ω·m, 0.5 s: 70 kg may step over 2696.1 V',
    other: 2686.6,
    otherSource: 'IEEE Std 80-2013 annex B, from memory',
    because: 'The annex rounds C_s to 0.74 on the way; a row of its own shows that this is all the difference.',
  },
  {
    taken: 'two and three loads of 1000 Ω on 240 V without a neutral: 144 V across the two',
    other: 145,
    otherSource: 'the teaching page itself',
    because: 'It rounds the current to 0.29 A first; its two voltages then add up to 241.7 V of 240.',
  },
  {
    taken: 'a 50 kVA, 400 V transformer of 4 % gives 1804 A',
    other: 1170,
    otherSource: 'a table on the web, seen second-hand',
    because: '1170 A would need 6.2 %: a misprint, likely of 1720 A, which is 4.2 %.',
  },
  {
    taken: 'the 300 kVA from line to neutral, 1.5 times as much at its terminals, after 150 ft of 3/0: 5156 A',
    other: 7457,
    otherSource: 'a worksheet of plan review, seen second-hand',
    because: 'It multiplies the answer by 1.5 instead of what goes into f, where the method it quotes does.',
  },
];
