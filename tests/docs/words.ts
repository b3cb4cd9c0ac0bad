/**
 * The words people meet, gathered from the code: each section with where it is met and, word by word,
 * the meaning that the code itself has. What it has none for stands in word-table.ts.
 */
import { Command, type Option } from 'commander';
import type { z } from 'zod';
import { checkCommand } from '#agent/cli/check.ts';
import { demoCommand } from '#agent/cli/demo.ts';
import { deviceCommand } from '#agent/cli/device.ts';
import { exportCommand } from '#agent/cli/export.ts';
import { ledgerCommand } from '#agent/cli/ledger.ts';
import { listenCommand } from '#agent/cli/listen.ts';
import { replayCommand } from '#agent/cli/replay.ts';
import { runCommand } from '#agent/cli/run.ts';
import { streamEventSchema } from '#agent/web/contract.ts';
import { openApi } from '#agent/web/openapi.ts';
import type { Route } from '#agent/web/route.ts';
import { alarmRoutes } from '#agent/web/routes/alarms.ts';
import { coverageRoutes } from '#agent/web/routes/coverage.ts';
import { healthRoutes } from '#agent/web/routes/health.ts';
import { holdRoutes } from '#agent/web/routes/holds.ts';
import { metricsRoutes } from '#agent/web/routes/metrics.ts';
import { runRoutes } from '#agent/web/routes/runs.ts';
import { signalRoutes } from '#agent/web/routes/signals.ts';
import { siteRoutes } from '#agent/web/routes/site.ts';
import { streamRoutes } from '#agent/web/routes/stream.ts';
import { Stream } from '#agent/web/stream.ts';
import * as fixed from '#agent/web/words.ts';
import { placeholders } from '#rules/alarm/placeholders.ts';
import { derivedKinds } from '#rules/derive/derived.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import { causeOf, gradeOf, quality } from '#rules/signal/quality.ts';
import { stationKinds } from '#rules/stations/all.ts';
import type { RuleTemplate, StationKind } from '#rules/stations/station.ts';
import { en } from '../../dashboards/text/en.ts';
import { FakePorts } from '../agent/web/fake-ports.ts';
import { readText } from '../tidy/source.ts';
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

const never = (): never => {
  throw new Error('the words of a command are read, never run');
};

/** Every command as the command line has it, nested ones by their whole name. */
export function commands(): Command[] {
  const program = new Command('forebond');
  const parts = { print: never, complain: never, setExitCode: never, siteOrExit: never };
  runCommand(program, parts);
  demoCommand(program, parts);
  listenCommand(program, parts);
  checkCommand(program, { readSite: never, print: never, setExitCode: never });
  replayCommand(program, parts);
  exportCommand(program, { defaultFolder: 'data', setExitCode: never });
  ledgerCommand(program, {
    verify: never,
    defaultFolder: 'data',
    print: never,
    setExitCode: never,
  });
  deviceCommand(program, { print: never, complain: never, setExitCode: never, readInput: never });
  return program.commands.flatMap((each) => [each, ...each.commands]);
}

const commandName = (command: Command): string =>
  command.parent === null || command.parent.name() === 'forebond'
    ? command.name()
    : `${command.parent.name()} ${command.name()}`;

const flags = (): Word[] =>
  commands().flatMap((command) =>
    command.options.map((option: Option) => ({
      word: `${commandName(command)} ${option.long ?? option.flags}`,
      meaning: option.description === '' ? null : option.description,
    })),
  );

/** By the file that makes them, so that a test can see that none was left out. */
export function routesByFile(): Readonly<Record<string, readonly Route[]>> {
  const ports = new FakePorts();
  return {
    alarms: alarmRoutes(ports),
    coverage: coverageRoutes(ports),
    health: healthRoutes(ports),
    holds: holdRoutes(ports),
    metrics: metricsRoutes(() => []),
    runs: runRoutes(ports),
    signals: signalRoutes(ports),
    site: siteRoutes(ports),
    stream: streamRoutes(new Stream(ports, never)),
  };
}

const routes = (): Word[] =>
  Object.values(routesByFile())
    .flat()
    .map(({ spec }) => ({ word: `${spec.method} ${spec.url}`, meaning: spec.summary }));

interface Described {
  readonly description?: string;
}
/** The fields whose meaning their name does not tell: those that the description explains. */
function routeFields(): Word[] {
  const { components } = openApi([], '0') as {
    readonly components: {
      readonly schemas: Readonly<
        Record<string, { readonly properties?: Readonly<Record<string, Described>> }>
      >;
    };
  };
  return Object.entries(components.schemas).flatMap(([name, { properties = {} }]) =>
    Object.entries(properties).flatMap(([field, { description }]) =>
      description === undefined ? [] : [{ word: `${name}.${field}`, meaning: description }],
    ),
  );
}

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
  ...['coverage', 'holds', 'runs', 'reader', 'people', 'shift', 'wait', 'aside', 'worstMargin'],
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

export const sections = (): Section[] => [
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

const section = (name: string, met: string, words: readonly Word[]): Section => ({
  name,
  met,
  words,
});

const labelParts = (): Word[] =>
  bare(['sentence', 'consequence', 'steps', 'do not', 'caution', 'deferral', 'advice']);
