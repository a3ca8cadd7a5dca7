import {
  quantity,
  say,
  whatIsTheMatter,
  type Account,
  type Ledger,
  type StoryLine,
  type Vocabulary,
} from '../explain/index.ts';
import type { Timeline } from '../scenario/index.ts';
import { wrapped } from './table.ts';

const WIDEST = 110;
const TIME_COLUMN = 10;

/** An account for the terminal: the outcome, why, the story in order of time, the ledger, what would have made it safe,
 *  the cautions. */
export function printed(
  { build, conditions }: Timeline,
  account: Account,
  advice: readonly StoryLine[],
  vocabulary: Vocabulary,
  columns: number,
): string {
  const width = Math.min(Math.max(columns, 60), WIDEST);
  const wrong = whatIsTheMatter(build.installation, conditions, vocabulary);
  const given = wrong.length === 0 ? [say('conditions.right', vocabulary)] : wrong;
  return [
    [build.installation.place, ...given.map((sentence) => `  ${sentence}`)],
    [account.headline, ...account.why.flatMap((sentence) => wrapped(sentence, width, '  '))],
    [
      say('account.story', vocabulary),
      ...account.story.flatMap((line, index) => timed(line, account.story[index - 1], width, vocabulary)),
    ],
    account.ledger === null ? [say('ledger.none', vocabulary)] : ledgerLines(account.ledger, width, vocabulary),
    ...(advice.length === 0
      ? []
      : [[say('account.repairs', vocabulary), ...advice.flatMap(({ text }) => wrapped(text, width, '  '))]]),
    [say('cautions.heading', vocabulary), ...account.cautions.flatMap((sentence) => wrapped(sentence, width, '  '))],
  ]
    .map((block) => block.join('\n'))
    .join('\n\n');
}

function timed({ at_s, text }: StoryLine, before: StoryLine | undefined, width: number, vocabulary: Vocabulary) {
  const when = at_s === before?.at_s ? '' : at_s < 0 ? say('account.before', vocabulary) : quantity(at_s, 's');
  const [first = '', ...more] = wrapped(text, width - TIME_COLUMN - 4, '');
  const indent = ' '.repeat(TIME_COLUMN + 4);
  return [`  ${when.padStart(TIME_COLUMN)}  ${first}`, ...more.map((line) => `${indent}${line}`)];
}

/** The ways home in amperes, each with as many decimals as the whole, so that the column adds up. */
function ledgerLines(ledger: Ledger, width: number, vocabulary: Vocabulary): readonly string[] {
  const decimals = Math.min(9, Math.max(0, 5 - Math.floor(Math.log10(ledger.total_A))));
  const heading = ledger.of === 'fault' ? 'ledger.heading' : 'ledger.heading.load';
  const total = say('ledger.total', vocabulary);
  const names = Math.max(total.length, ...ledger.ways.map(({ text }) => text.length));
  const row = (text: string, amperes: number) => `  ${text.padEnd(names)}  ${amperes.toFixed(decimals).padStart(12)} A`;
  const lines = ledger.ways.flatMap(({ text, amperes, hops }) => [
    row(text, amperes),
    ...(hops.length === 0 ? [] : wrapped(hops.join(' → '), width, '      ')),
  ]);
  return [
    say(heading, vocabulary, { amperes: quantity(ledger.total_A, 'A') }),
    ...lines,
    `  ${'─'.repeat(names + 16)}`,
    row(total, ledger.total_A),
  ];
}
