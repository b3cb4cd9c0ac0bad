/**
 * What a message says: the alarm's own label, filled in, as the page shows it.
 */
import { endedBy } from '#rules/alarm/ended-by.ts';
import { clockText, quantityText } from '#rules/alarm/say.ts';
import type { RuleCard } from '#rules/plan/card.ts';
import type { Chase, Note } from '#rules/telling/chase.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import { limits } from '../limits.ts';
import type { Said, Saying } from '../notify/teller-parts.ts';
import type { AlarmView } from '../web/contract.ts';
import type { Core } from './core.ts';
import { labelIn, withComma } from './label-in.ts';
import { presentForecast } from './present-forecast.ts';
import { type TellingWords, tellingWords } from './telling-words.ts';
import { alarmView } from './views.ts';

const dayMs = 86_400_000;

/** Nobody acts by an alarm of the day before yesterday. */
const usefulMs = limits.outboxTryMs;

export function messageOf(core: Core, saying: Saying): Said {
  const { chase } = saying;
  if (chase === null) return digestSaid(core, saying);
  if (chase.members !== undefined) return floodSaid(core, saying, chase);
  const view = viewOf(core, chase.occurrence);
  return view === null ? bareSaid(core, saying, chase) : alarmSaid(core, saying, chase, view);
}

export function testSaid(core: Core, at: number, language: 'en' | 'de'): Said {
  const words = tellingWords[language];
  return {
    ...plain(core, at, language),
    title: `${words.testTitle} · ${core.plans.name}`,
    sentence: words.test,
    steps: words.testSteps,
    url: '/#/phone',
  };
}

/** Said of no alarm. */
export const plain = (core: Core, at: number, language: 'en' | 'de'): Said => ({
  title: '',
  sentence: '',
  consequence: '',
  steps: [],
  doNot: [],
  caution: '',
  deferral: tellingWords[language].deferral,
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
  const { language } = saying;
  const label = labelIn(view.label, language, core.plans.timezone);
  const { station, highlyManaged } = chase;
  const words = wordsFor(saying, view);
  const head = ended(saying, words) ?? words.word[label.word];
  return {
    ...plain(core, saying.at, language),
    ...label,
    title: `${head} · ${station}`.slice(0, 120),
    sentence: sentenceOf(core, saying, label.sentence, words),
    priority: view.priority,
    highlyManaged,
    url: urlOf(chase.occurrence),
    at: view.raised,
    usefulUntil: saying.at + usefulMs,
    station,
    limitText: limitText(core, view, language),
  };
}

/** The occurrence is not at hand any more: what the chase knows. */
const bareSaid = (core: Core, saying: Saying, chase: Chase): Said => {
  const words = tellingWords[saying.language];
  return {
    ...plain(core, saying.at, saying.language),
    title: `${ended(saying, words) ?? words.alarm} · ${chase.station}`.slice(0, 120),
    sentence: sentenceOf(core, saying, words.raised(chase.rule), words),
    priority: chase.priority,
    highlyManaged: chase.highlyManaged,
    url: urlOf(chase.occurrence),
    usefulUntil: saying.at + usefulMs,
    station: chase.station,
  };
};

function floodSaid(core: Core, saying: Saying, chase: Chase): Said {
  const { language, at } = saying;
  const words = tellingWords[language];
  const members = chase.members ?? [];
  const views = members.flatMap((id) => viewOf(core, id) ?? []);
  const worst = views.filter(({ priority }) => priority === chase.priority).at(-1) ?? views.at(-1);
  const count = members.length;
  const waiting = chase.unanswered?.length ?? count;
  const over = ended(saying, words);
  const label = worst === undefined ? null : labelIn(worst.label, language, core.plans.timezone);
  return {
    ...plain(core, at, language),
    ...label,
    title: `${over ?? words.alarms(count)} · ${core.plans.name}`.slice(0, 120),
    sentence:
      over === null
        ? words.flood(count, waiting, label?.sentence ?? chase.station)
        : words.floodOver(count),
    priority: chase.priority,
    usefulUntil: at + usefulMs,
    station: worst === undefined ? '' : `${worst.line}/${worst.station}`,
    count,
  };
}

function digestSaid(core: Core, { notes, at, language }: Saying): Said {
  const words = tellingWords[language];
  const listed = (list: readonly Note[], after = ''): string =>
    list.map(({ rule, why, count }) => `${rule} ${count} × ${words.note[why]}${after}`).join('; ');
  const many = notes.reduce((sum, { count }) => sum + count, 0);
  const untold = notes.filter(({ told }) => told !== true);
  const called = notes.filter(({ told }) => told === true);
  const sentences = [
    ...(untold.length === 0 ? [] : [words.untold(listed(untold))]),
    ...(called.length === 0 ? [] : [words.managed(listed(called, words.eachTime))]),
  ];
  return {
    ...plain(core, at, language),
    title: `${words.digestTitle(many)} · ${core.plans.name}`.slice(0, 120),
    sentence: sentences.join(' '),
    steps: words.digestSteps,
    count: many,
  };
}

/** The end of judging is not the end of what was found. */
function wordsFor({ language }: Saying, { transitions }: AlarmView): TellingWords {
  const words = tellingWords[language];
  return transitions.at(-1)?.reason === endedBy.gate
    ? { ...words, over: words.notJudged, overAt: words.notJudgedSince }
    : words;
}

const ended = ({ kind }: Saying, { over, answered }: TellingWords): string | null =>
  kind === 'over' ? over : kind === 'answered' ? answered : null;

function sentenceOf(
  core: Core,
  { kind, at }: Saying,
  sentence: string,
  words: TellingWords,
): string {
  const clock = clockText(at, core.plans.timezone, at);
  if (kind === 'over') return `${words.overAt(clock)}${sentence}`;
  if (kind === 'answered') return `${words.answeredSince(clock)}${sentence}`;
  return kind === 'again' ? `${words.again}${sentence}` : sentence;
}

function limitText(core: Core, { evidence, signal: id }: AlarmView, language: 'en' | 'de'): string {
  const { limit, side, unit } = evidence;
  if (limit === null) return '';
  const signal = core.plans.now.plan.signals.find((each) => each.id === id);
  const text = quantityText(limit, unit, signal?.digits ?? null);
  return tellingWords[language].limit(language === 'de' ? withComma(text) : text, side);
}

function viewOf(core: Core, id: string): AlarmView | null {
  const known: Occurrence | null = core.desk.occurrence(id);
  if (known === null) return null;
  const { occurrence } = presentForecast(core, known);
  const { rules, plan } = core.plans.now;
  const card: RuleCard | null = rules.find((one) => one.id === occurrence.rule) ?? null;
  const signal = plan.signals.find((one) => one.id === occurrence.signal) ?? null;
  return alarmView(occurrence, card, signal, core.plans.timezone, core.plans.now.ownKinds);
}
