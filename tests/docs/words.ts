/**
 * The words people meet, gathered from the code: each section with where it is met and, word by word,
 * the meaning that the code itself has. What it has none for stands in word-table.ts.
 */
import type { z } from 'zod';
import { streamEventSchema } from '#agent/web/contract.ts';
import * as fixed from '#agent/web/words.ts';
import { placeholders } from '#rules/alarm/placeholders.ts';
import { derivedKinds } from '#rules/derive/derived.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import { causeOf, gradeOf, quality } from '#rules/signal/quality.ts';
import { stationKinds } from '#rules/stations/all.ts';
import type { RuleTemplate, StationKind } from '#rules/stations/station.ts';
import { en } from '../../dashboards/text/en.ts';
import { readText } from '../tidy/source.ts';
import { commandName, commands, flags, routeFields, routes } from './interface-words.ts';
import { materialFields, siteFields } from './written-fields.ts';

export interface Word {
  readonly word: string;
  /** As the code has it; null where the table must. */
  readonly meaning: string | null;
  /** As the code has it; null where the table must. */
  readonly origin?: string;
}
export interface Section {
  readonly name: string;
  /** Where a person meets these words. */
  readonly met: string;
  readonly words: readonly Word[];
}

const bare = (words: readonly string[]): Word[] => words.map((word) => ({ word, meaning: null }));
const said = (words: Readonly<Record<string, string>>): Word[] =>
  Object.entries(words).map(([word, meaning]) => ({ word, meaning }));

/** A sentence with its placeholders as plain words: `{$value}` is "(value)". */
const plain = (text: string): string => text.replaceAll(/\{\$([^}]*)\}/g, '($1)');

/** Its name is ours; its first limit has the basis that stands beside it. */
function ruleOrigin({ numbers }: RuleTemplate): string {
  const basis = numbers[0]?.basis;
  if (basis === undefined) return 'ours';
  if (basis.source !== null) return `name ours; limit ${basis.source}`;
  const marks = {
    CP: 'trade use',
    PUB: 'published',
    DS: 'the data sheet’s',
    SITE: 'the plant’s own',
    EJ: 'ours',
  };
  return basis.mark === 'EJ' ? 'ours' : `name ours; limit ${marks[basis.mark]}`;
}

const perStation = (words: (kind: StationKind) => Word[]): Word[] =>
  [...stationKinds.values()].flatMap((kind) =>
    words(kind).map((each) => ({ ...each, word: `${kind.name}: ${each.word}` })),
  );

const wordsOf = (schema: z.ZodEnum): Word[] => bare(schema.options.map(String));

/** Names of the views that the page's frame knows, from its text: it is a component, not data. */
const viewNames = (): Word[] =>
  [...readText('dashboards/app.tsx').matchAll(/^ {2}(?:'(\w*)'|(\w+)): \(/gm)].map((match) => ({
    word: `#/${match[1] ?? match[2] ?? ''}`,
    meaning: null,
  }));
const footWords = (): Word[] =>
  [...readText('dashboards/parts/foot.tsx').matchAll(/^ {2}\['\w*', '(\w+)'/gm)].map((match) => ({
    word: String(en[match[1] as keyof typeof en]),
    meaning: null,
  }));
/** Headings and short states of the page, by their place in the catalogue. */
const pageWords = [
  ...[
    'coverage',
    'holds',
    'runs',
    'reader',
    'people',
    'shift',
    'wait',
    'overNotices',
    'aside',
    'worstMargin',
  ],
  ...['notAnswered', 'cannotTell', 'doNot', 'caution', 'estimated', 'handReading', 'notSent'],
  ...['notWatchedHere', 'notArmed', 'unconfirmed', 'moot', 'staleLine', 'noReadingSince'],
  ...['notUsable', 'acknowledge', 'shelve', 'unshelve', 'reset', 'setHold', 'lift'],
] as const;

const qualities = (): Word[] =>
  Object.values(quality).map((each) => ({
    word: `${each} ${causeOf(each) ?? 'good'}`,
    meaning: null,
    origin: each === quality.good ? 'ours' : `ours; counts as ${gradeOf(each)}`,
  }));

const alarmSections = (): Section[] => [
  section('Signal words', 'the panel on top of an alarm', wordsOf(fixed.signalWordWords)),
  section('Parts of an alarm', 'an alarm, under its signal word', labelParts()),
  section('Alarm states', 'an alarm; `state` in the interface', wordsOf(fixed.alarmStateWords)),
  section(
    'Transitions',
    'an alarm, under what happened; the ledger',
    wordsOf(fixed.transitionWords),
  ),
  section('Priorities', 'an alarm, beside its signal word', wordsOf(fixed.priorityWords)),
  section('Grades of a reading', 'a signal; `quality.grade`', wordsOf(fixed.gradeWords)),
  section(
    'Why a reading is not good',
    'a signal; `quality.cause`; the code in the store',
    qualities(),
  ),
  section(
    'Readiness of a rule',
    'a station, what is watched; `readiness`',
    wordsOf(fixed.readinessWords),
  ),
  section(
    'States of a hazard',
    'what is watched; `state` in coverage',
    bare(Object.keys(en.hazardState)),
  ),
  section('What can be held', 'holds; `what`', wordsOf(fixed.holdWhatWords)),
  section('Dispositions', 'when a hold is lifted', wordsOf(fixed.dispositionWords)),
  section('Where a number comes from', 'a rule’s numbers; `mark`', bare(Object.keys(en.mark))),
  section('Kinds of signals', 'a signal; `kind`', wordsOf(fixed.signalKindWords)),
  section('Conditions of the agent', 'the top line; /api/health', wordsOf(fixed.conditionWords)),
];

const plantSections = (): Section[] => [
  section(
    'Station kinds',
    '`kind` of a station in the site file; the line',
    [...stationKinds.values()].map(({ name, summary }) => ({ word: name, meaning: summary })),
  ),
  section(
    'Signals',
    'under `signals` of a station; a station’s readings',
    perStation(({ signals }) => signals.map(({ name, meaning }) => ({ word: name, meaning }))),
  ),
  section(
    'Signals worked out',
    'a station’s readings, marked as computed',
    perStation(({ derived }) => derived.map(({ name, meaning }) => ({ word: name, meaning }))),
  ),
  section(
    'Kinds of derived signals',
    '`kind` of a derived signal',
    [...derivedKinds.values()].map(({ name, summary, source }) => ({
      word: name,
      meaning: summary,
      origin: source.startsWith('difference') ? 'ours' : source,
    })),
  ),
  section(
    'Rule kinds',
    '`kind` of a rule of your own',
    [...ruleKinds.values()].map(({ name, summary }) => ({ word: name, meaning: summary })),
  ),
  section(
    'Rules',
    'under `rules` of a station; an alarm, why this rule exists',
    perStation(({ rules }) =>
      rules.map((rule) => ({
        word: rule.name,
        meaning: `${plain(rule.label.sentence)} ${rule.label.consequence}`,
        origin: ruleOrigin(rule),
      })),
    ),
  ),
  section(
    'Hazards',
    'what is watched; a station, not watched',
    perStation(({ hazards }) => hazards.map(({ id, words }) => ({ word: id, meaning: words }))),
  ),
];

const fileAndPageSections = (): Section[] => [
  section('Placeholders', '`{$…}` in a sentence of your own', said(placeholders)),
  section('Site file', 'the site file', siteFields()),
  section('Material sheet', 'a material sheet', materialFields()),
  section('Places at the foot of the page', 'the foot of every page', footWords()),
  section('Views of the page', 'the address, after the `#`', viewNames()),
  section(
    'Words on the page',
    'headings, states and buttons of the page',
    bare(pageWords.map((id) => en[id])),
  ),
  section(
    'Commands',
    'the command line',
    commands().map((each) => ({ word: commandName(each), meaning: each.description() })),
  ),
  section('Flags', 'after a command', flags()),
  section('Routes', 'scripts; the page uses the same', routes()),
  section('Fields of note', 'answers of the routes', routeFields()),
  section(
    'Stream events',
    '`event:` of /api/stream',
    bare(streamEventSchema.options.map(({ shape }) => shape.event.value)),
  ),
];

export const sections = (): Section[] => [
  ...alarmSections(),
  ...plantSections(),
  ...fileAndPageSections(),
];

const section = (name: string, met: string, words: readonly Word[]): Section => ({
  name,
  met,
  words,
});

const labelParts = (): Word[] =>
  bare(['sentence', 'consequence', 'steps', 'do not', 'caution', 'deferral', 'advice']);
