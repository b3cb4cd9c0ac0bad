/**
 * What a message says: the alarm's own label, filled in, as the page shows it.
 */
import { deferral } from '#rules/alarm/label.ts';
import { clockText, quantityText } from '#rules/alarm/say.ts';
import type { RuleCard } from '#rules/plan/card.ts';
import { counted } from '#rules/quantity/counted.ts';
import type { Chase, Note } from '#rules/telling/chase.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import { limits } from '../limits.ts';
import type { Said, Saying } from '../notify/teller-parts.ts';
import type { AlarmView } from '../web/contract.ts';
import type { Core } from './core.ts';
import { alarmView } from './views.ts';

const dayMs = 86_400_000;

/** Nobody acts by an alarm of the day before yesterday. */
const usefulMs = limits.outboxTryMs;

export function messageOf(core: Core, saying: Saying): Said {
  const { chase, notes, at } = saying;
  if (chase === null) return digestSaid(core, notes, at);
  if (chase.members !== undefined) return floodSaid(core, saying, chase);
  const view = viewOf(core, chase.occurrence);
  return view === null ? bareSaid(core, saying, chase) : alarmSaid(core, saying, chase, view);
}

export function testSaid(core: Core, at: number): Said {
  return {
    ...plain(core, at),
    title: `Test · ${core.plans.name}`,
    sentence: 'This is a test that you asked for. An alarm would come like this.',
    steps: ['Nothing is wrong, and there is nothing to do.'],
    url: '/#/phone',
  };
}

/** Said of no alarm. */
export const plain = (core: Core, at: number): Said => ({
  title: '',
  sentence: '',
  consequence: '',
  steps: [],
  doNot: [],
  caution: '',
  deferral,
  word: 'NOTICE',
  priority: 'low',
  highlyManaged: false,
  url: '/#/',
  at,
  usefulUntil: at + dayMs,
  site: core.plans.name,
  station: '',
  limitText: '',
  count: 1,
});

const urlOf = (occurrence: string): string => `/#/alarm/${encodeURIComponent(occurrence)}`;

function alarmSaid(core: Core, saying: Saying, chase: Chase, view: AlarmView): Said {
  const { label } = view;
  const { station, highlyManaged } = chase;
  const { priority } = view;
  return {
    ...plain(core, saying.at),
    title: `${ended(saying) ?? label.word} · ${station}`.slice(0, 120),
    sentence: sentenceOf(core, saying, label.sentence),
    consequence: label.consequence,
    steps: label.steps,
    doNot: label.do_not,
    caution: label.caution,
    word: label.word,
    priority,
    highlyManaged,
    url: urlOf(chase.occurrence),
    at: view.raised,
    usefulUntil: saying.at + usefulMs,
    station,
    limitText: limitText(core, view),
  };
}

/** The occurrence is not at hand any more: what the chase knows. */
const bareSaid = (core: Core, saying: Saying, chase: Chase): Said => ({
  ...plain(core, saying.at),
  title: `${ended(saying) ?? 'Alarm'} · ${chase.station}`.slice(0, 120),
  sentence: sentenceOf(core, saying, `${chase.rule} raised an alarm.`),
  priority: chase.priority,
  highlyManaged: chase.highlyManaged,
  url: urlOf(chase.occurrence),
  usefulUntil: saying.at + usefulMs,
  station: chase.station,
});

function floodSaid(core: Core, saying: Saying, chase: Chase): Said {
  const members = chase.members ?? [];
  const views = members.flatMap((id) => viewOf(core, id) ?? []);
  const worst = views.filter(({ priority }) => priority === chase.priority).at(-1) ?? views.at(-1);
  const count = members.length;
  const waiting = chase.unanswered?.length ?? count;
  const over = ended(saying);
  return {
    ...plain(core, saying.at),
    title: `${over ?? counted(count, 'alarm')} · ${core.plans.name}`.slice(0, 120),
    sentence:
      over === null
        ? `${counted(count, 'alarm')} within a short time, ${waiting} of them unanswered. Worst: ${worst?.label.sentence ?? chase.station}`
        : `${counted(count, 'alarm')} that came within a short time ${count === 1 ? 'is' : 'are'} answered or over.`,
    consequence: worst?.label.consequence ?? '',
    steps: worst?.label.steps ?? [],
    doNot: worst?.label.do_not ?? [],
    caution: worst?.label.caution ?? '',
    word: worst?.label.word ?? 'NOTICE',
    priority: chase.priority,
    usefulUntil: saying.at + usefulMs,
    station: worst === undefined ? '' : `${worst.line}/${worst.station}`,
    count,
  };
}

function digestSaid(core: Core, notes: readonly Note[], at: number): Said {
  const many = notes.reduce((sum, { count }) => sum + count, 0);
  const untold = notes.filter(({ told }) => told !== true);
  const called = notes.filter(({ told }) => told === true);
  const sentences = [
    ...(untold.length === 0
      ? []
      : [`These came and went without calling anybody: ${untold.map(noteText).join('; ')}.`]),
    ...(called.length === 0
      ? []
      : [
          `These are highly managed, so handled with special care: ${called.map((note) => `${noteText(note)}, told each time`).join('; ')}.`,
        ]),
  ];
  return {
    ...plain(core, at),
    title: `${counted(many, 'alarm')} that came and went · ${core.plans.name}`.slice(0, 120),
    sentence: sentences.join(' '),
    steps: ['Look at delay and deadband of each rule that comes and goes, and at its sensor.'],
    count: many,
  };
}

const noteWords = {
  chattering: 'chattering',
  fleeting: 'over within a minute',
  quiet: 'over within the quiet hours',
} as const;
const noteText = ({ rule, why, count }: Note): string => `${rule} ${count} × ${noteWords[why]}`;

const ended = ({ kind }: Saying): string | null =>
  kind === 'over' ? 'Over' : kind === 'answered' ? 'Answered' : null;

function sentenceOf(core: Core, saying: Saying, sentence: string): string {
  const { kind, at } = saying;
  const clock = clockText(at, core.plans.timezone, at);
  if (kind === 'over') return `Over at ${clock}: ${sentence}`;
  if (kind === 'answered') return `Somebody has it since ${clock}: ${sentence}`;
  return kind === 'again' ? `Still unanswered: ${sentence}` : sentence;
}

function limitText(core: Core, { evidence, signal: id }: AlarmView): string {
  const { limit, side, unit } = evidence;
  if (limit === null) return '';
  const signal = core.plans.now.plan.signals.find((each) => each.id === id);
  const text = quantityText(limit, unit, signal?.digits ?? null);
  return side === null ? `limit ${text}` : `${side} limit ${text}`;
}

function viewOf(core: Core, id: string): AlarmView | null {
  const occurrence: Occurrence | null = core.desk.occurrence(id);
  if (occurrence === null) return null;
  const { rules, plan } = core.plans.now;
  const card: RuleCard | null = rules.find((one) => one.id === occurrence.rule) ?? null;
  const signal = plan.signals.find((one) => one.id === occurrence.signal) ?? null;
  return alarmView(occurrence, card, signal, core.plans.timezone, core.plans.now.ownKinds);
}
