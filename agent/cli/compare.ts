/**
 * `forebond replay --compare OTHER-SITE-FILE`: what another site file would change of the alarms of
 * recorded data: gained, lost, moved, and the load of each on people.
 */
import { type AlarmLoad, alarmLoad } from '#rules/alarm/alarm-load.ts';
import { type AlarmStory, annunciations } from '#rules/alarm/alarm-story.ts';
import { type AlarmDifference, compareAlarms } from '#rules/alarm/compare-alarms.ts';
import { priorities } from '#rules/alarm/priority.ts';
import { counted } from '#rules/quantity/counted.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { compareSites, type Replayed, ReplayFailed } from '../wiring/compare-sites.ts';
import type { ReplayJob } from '../wiring/replay-job.ts';
import { badRowLines } from './bad-rows.ts';
import type { CliParts } from './parts.ts';

type Both<T> = readonly [T, T];

export async function printComparison(
  jobs: Both<ReplayJob>,
  json: boolean,
  parts: CliParts,
): Promise<void> {
  const began = performance.now();
  const { complain, print } = parts;
  const progress = (atMs: EpochMs): void => complain(`at ${new Date(atMs).toISOString()}`);
  let both: Both<Replayed>;
  try {
    both = await compareSites(jobs, { progress, complain });
  } catch (error) {
    if (!(error instanceof ReplayFailed)) throw error;
    complain(error.message);
    parts.setExitCode(1);
    return;
  }
  const seconds = Number(((performance.now() - began) / 1_000).toFixed(3));
  const span = spanOf(both);
  const difference = compareAlarms(both[0].stories, both[1].stories, span.untilMs);
  const load = both.map(({ stories }) =>
    alarmLoad(annunciations(stories), span.fromMs, span.untilMs),
  ) as [AlarmLoad, AlarmLoad];
  const lines = json
    ? jsonLines(both, difference, load, seconds)
    : tableLines(jobs, both, difference, load, seconds);
  for (const line of lines) print(line);
}

/** From the first judged moment to a moment past the last. */
function spanOf(both: Both<Replayed>): { readonly fromMs: EpochMs; readonly untilMs: EpochMs } {
  const fromMs = Math.min(...both.map(({ end }) => end.fromMs ?? 0));
  return { fromMs, untilMs: Math.max(fromMs, ...both.map(({ end }) => end.toMs ?? 0)) + 1 };
}

const onlyIn = (one: Replayed, other: Replayed): string[] => {
  const known = new Set(other.rules);
  return one.rules.filter((rule) => !known.has(rule));
};

/** Of a shorter record no rate is told: one alarm in a minute is no 1,440 a day. */
const rateSpanMsMin = 3_600_000;

const isRated = ({ fromMs, untilMs }: AlarmLoad): boolean => untilMs - fromMs >= rateSpanMsMin;

/** null for a rate that the record is too short for. */
const rated = (load: AlarmLoad): object =>
  isRated(load) ? load : { ...load, perDay: null, perHour: null, perTenMinutes: null };

// ── one JSON object a line ──────────────────────────────────────────────────────────────────────

function jsonLines(
  both: Both<Replayed>,
  { same, gained, lost, moved }: AlarmDifference,
  load: Both<AlarmLoad>,
  seconds: number,
): string[] {
  const alarm = (story: AlarmStory, side: 0 | 1): object => ({
    at: story.raisedMs,
    rule: story.rule,
    signal: story.signal,
    returned: story.returnedMs,
    value: story.evidence.value ?? null,
    limit: story.evidence.limit ?? null,
    unit: both[side].units[story.signal] ?? null,
    priority: story.priority,
  });
  return [
    ...gained.map((story) => ({ difference: 'gained', ...alarm(story, 1) })),
    ...lost.map((story) => ({ difference: 'lost', ...alarm(story, 0) })),
    ...moved.map(({ before, after, laterMs }) => ({
      difference: 'moved',
      ...alarm(after, 1),
      was: before.raisedMs,
      later_ms: laterMs,
    })),
    {
      same,
      gained: gained.length,
      lost: lost.length,
      moved: moved.length,
      rules_gone: onlyIn(both[0], both[1]),
      rules_new: onlyIn(both[1], both[0]),
      load: load.map(rated),
      samples: both[0].end.samples,
      late: both[0].end.late,
      bad_rows: both[0].end.badRows,
      seconds,
    },
  ].map((line) => JSON.stringify(line));
}

// ── for people ──────────────────────────────────────────────────────────────────────────────────

function tableLines(
  jobs: Both<ReplayJob>,
  both: Both<Replayed>,
  difference: AlarmDifference,
  load: Both<AlarmLoad>,
  seconds: number,
): string[] {
  const { same, gained, lost, moved } = difference;
  const hours = ((load[0].untilMs - load[0].fromMs) / 3_600_000).toFixed(1);
  return [
    `now    ${jobs[0].site}`,
    `other  ${jobs[1].site}`,
    '',
    ...alarmTable('gained', gained, both[1]),
    ...alarmTable('lost', lost, both[0]),
    ...moved.map(
      ({ after, laterMs }) =>
        `moved   ${alarmCells(after, both[1])}  ${minutes(Math.abs(laterMs))} ${laterMs > 0 ? 'later' : 'earlier'}`,
    ),
    `${gained.length} gained, ${lost.length} lost, ${moved.length} moved, ${same} the same`,
    ...onlyIn(both[0], both[1]).map((rule) => `no such rule in the other: ${rule}`),
    ...onlyIn(both[1], both[0]).map((rule) => `a rule of the other alone: ${rule}`),
    '',
    'What people would hear (figures of ISA-18.2; it wants 30 days or more)',
    ...loadTable(load),
    '',
    `${counted(both[0].end.samples, 'sample')}, ${hours} h of data, ${seconds} s`,
    ...(both[0].end.late > 0
      ? [
          `${counted(both[0].end.late, 'row')} stood later in the file than the hold of the signal allows`,
        ]
      : []),
    ...badRowLines(both[0].end.badRows),
  ];
}

const alarmTable = (word: string, stories: readonly AlarmStory[], side: Replayed): string[] =>
  stories.map((story) => `${word.padEnd(8)}${alarmCells(story, side)}`);

function alarmCells(story: AlarmStory, side: Replayed): string {
  const unit = side.units[story.signal] ?? '';
  const { value, limit } = story.evidence;
  const quantity = (number: number | undefined): string =>
    number === undefined ? '' : `${Number(number.toPrecision(6))} ${unit}`;
  const at = new Date(story.raisedMs).toISOString();
  return `${at.padEnd(25)}${story.rule.padEnd(44)} ${quantity(value).padEnd(14)}${quantity(limit)}`.trimEnd();
}

const minutes = (ms: number): string => `${Number((ms / 60_000).toFixed(1))} min`;

function loadTable(load: Both<AlarmLoad>): string[] {
  const row = (words: string, figure: (of: AlarmLoad) => string): string =>
    `${words.padEnd(34)}${figure(load[0]).padStart(10)}${figure(load[1]).padStart(10)}`;
  const share = (value: number): string => `${(100 * value).toFixed(1)} %`;
  return [
    `${''.padEnd(34)}${'now'.padStart(10)}${'other'.padStart(10)}`,
    row('alarms told', (of) => String(of.told)),
    isRated(load[0])
      ? row('a day', (of) => of.perDay.toFixed(1))
      : `${'a day'.padEnd(34)}  too short for a rate`,
    row('most in 10 min', (of) => String(of.mostInTenMinutes)),
    row('floods', (of) => String(of.floods.length)),
    row('time in flood', (of) => share(of.shareInFlood)),
    row('rules that chattered', (of) => String(of.chattering.length)),
    row('gone within a minute', (of) =>
      String(of.fleeting.reduce((total, { count }) => total + count, 0)),
    ),
    row('standing longer than a day', (of) => String(of.standing.length)),
    ...priorities.map((priority) =>
      row(`priority ${priority}`, (of) => String(of.byPriority[priority].count)),
    ),
  ];
}
