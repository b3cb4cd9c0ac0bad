/**
 * What the mails that come by the clock say: alarm performance of the week, and the signed head of
 * the ledger with the way to verify it.
 */
import { clockText } from '#rules/alarm/say.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { isDiskRefusal } from '../errors.ts';
import type { Report, Said } from '../notify/teller-parts.ts';
import { checkpointKey, signedCheckpoint } from '../store/checkpoint.ts';
import { loadView } from './alarm-load-view.ts';
import type { Core } from './core.ts';
import { ranWithin } from './ran.ts';
import { type ReportWords, reportWords } from './report-words.ts';
import { plain } from './telling-message.ts';

const dayMs = 86_400_000;

export const reportSaid = (core: Core, report: Report): Said | null =>
  report.kind === 'week' ? weekSaid(core, report) : checkpointSaid(core, report);

const whenText = (core: Core, at: EpochMs): string => clockText(at, core.plans.timezone, 0);

function weekSaid(core: Core, { dueMs, beforeMs, language }: Report): Said {
  const words = reportWords[language];
  const { fromMs, coveredMs } = ranWithin(core, beforeMs, dueMs);
  const span = { from: whenText(core, beforeMs), to: whenText(core, dueMs) };
  const common = {
    ...plain(core, dueMs, language),
    title: words.weekTitle(whenText(core, dueMs).slice(0, 10), core.plans.name).slice(0, 120),
    url: '/#/performance',
    usefulUntil: dueMs + 7 * dayMs,
  };
  if (coveredMs === 0) return { ...common, sentence: words.noRecord(span), count: 0 };
  const load = loadView(core, { sinceMs: fromMs, untilMs: dueMs, line: null });
  const { figures } = load;
  return {
    ...common,
    sentence: words.week({ ...span, told: figures.told, perDay: perDay(figures.told, coveredMs) }),
    steps: words.weekSteps,
    count: figures.told,
    details: [
      { heading: words.record, lines: words.covers(coveredMs, dueMs - beforeMs) },
      { heading: words.rates, lines: rateLines(words, figures, coveredMs) },
      { heading: words.priorities, lines: priorityLines(words, figures.by_priority) },
      { heading: words.frequent, lines: frequentLines(words, figures) },
      { heading: words.nuisance, lines: nuisanceLines(core, words, figures) },
    ],
  };
}

type Figures = ReturnType<typeof loadView>['figures'];

/** Over the time there is a record of, not over the week. */
const perDay = (told: number, coveredMs: number): number => (told * dayMs) / coveredMs;

const rateLines = (words: ReportWords, figures: Figures, coveredMs: number): string[] => [
  words.perDay(perDay(figures.told, coveredMs)),
  words.mostInTenMinutes(figures.most_in_ten_minutes),
  words.tenMinutesAbove(figures.share_of_ten_minutes_above_10),
  words.hoursAbove(figures.share_of_hours_above_30),
  words.inFlood(figures.floods.length, figures.share_in_flood),
];

const priorityLines = (words: ReportWords, by: Figures['by_priority']): string[] =>
  (['high', 'medium', 'low'] as const).map((priority) => words.priority(priority, by[priority]));

const frequentLines = (words: ReportWords, { top_ten, share_of_top_ten }: Figures): string[] =>
  top_ten.length === 0
    ? [words.none]
    : [
        ...top_ten.map(({ rule, count, share }) => words.frequentEach(rule, count, share)),
        words.together(share_of_top_ten),
      ];

function nuisanceLines(
  core: Core,
  words: ReportWords,
  { chattering, fleeting, standing }: Figures,
): string[] {
  const rules = (list: readonly { readonly rule: string }[]): string =>
    list.length === 0 ? words.none : [...new Set(list.map(({ rule }) => rule))].join(', ');
  return [
    words.chattering(rules(chattering)),
    words.fleeting(rules(fleeting)),
    words.standing(
      standing.length === 0
        ? words.none
        : standing.map(({ rule, since }) => `${rule} (${whenText(core, since)})`).join(', '),
    ),
  ];
}

export const checkpointName = 'checkpoint.json';

/** null where there is nothing to sign yet, or the disk refuses the key. */
function checkpointSaid(core: Core, { dueMs, language }: Report): Said | null {
  const { store, plans } = core;
  const head = store.ledgerHead;
  if (head.id === 0) return null;
  const words = reportWords[language];
  try {
    const made = signedCheckpoint(checkpointKey(store.folder), plans.name, head, core.tellingNow);
    const at = whenText(core, core.tellingNow);
    return {
      ...plain(core, dueMs, language),
      title: words.checkpointTitle(plans.name).slice(0, 120),
      sentence: words.checkpoint({ at, id: made.id, hash: made.hash }),
      steps: words.checkpointSteps(checkpointName),
      url: '/#/back',
      usefulUntil: dueMs + 7 * dayMs,
      attachment: {
        name: checkpointName,
        contentType: 'application/json',
        text: `${JSON.stringify(made, null, 2)}\n`,
      },
    };
  } catch (error) {
    // Said in health and in the log; it is tried again.
    if (!isDiskRefusal(error)) throw error;
    return null;
  }
}
