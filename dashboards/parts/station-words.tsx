/** What a station says of itself in a line or two: its worst margin, its most urgent alarm. */
import type { AlarmView, SignalView } from '../../agent/web/contract.ts';
import { bands, isAnswered, isOpen, isOver, type Known } from '../judge/bands.ts';
import { cardsInBands } from '../judge/cards.ts';
import type { Line } from '../judge/gates.ts';
import { type StationPlace, stationId } from '../judge/journey.ts';
import { judgedOf } from '../judge/judged.ts';
import { anyJudged, judgingRules, type Margin, worstMargin } from '../judge/margin.ts';
import { isUsable } from '../judge/reading.ts';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { calmText } from '../text/calm.ts';
import { valueText } from '../text/difference.ts';
import { alarmSentence } from '../text/label.ts';
import { ownName, ruleNames } from '../text/names.ts';
import { differenceText } from '../text/quantity.ts';
import { say } from '../text/say.ts';
import { nowText, When } from './alarm-facts.tsx';
import { Said } from './said.tsx';
import { SignalWord } from './signal-word.tsx';

export const stationSignals = (
  signals: ReadonlyMap<string, SignalView>,
  station: StationPlace,
): SignalView[] => [...signals.values()].filter((each) => stationId(each) === stationId(station));

export interface StationCard {
  readonly worst: AlarmView;
  readonly also: readonly AlarmView[];
}

/** Open alarms as cards, the most urgent first. */
export function cardsOf(alarms: readonly AlarmView[], known: Known, now: number): StationCard[] {
  const byId = new Map(alarms.map((alarm) => [alarm.occurrence, alarm]));
  const order = cardsInBands(alarms, known, now);
  return bands
    .flatMap((band) => order[band])
    .flatMap((card) => {
      const [worst, ...also] = card.flatMap((each) => byId.get(each) ?? []);
      return worst === undefined ? [] : [{ worst, also }];
    });
}

/** Those of a station. */
export const stationCards = (
  alarms: ReadonlyMap<string, AlarmView>,
  station: StationPlace,
  known: Known,
  now: number,
): StationCard[] =>
  cardsOf(
    [...alarms.values()].filter((alarm) => stationId(alarm) === stationId(station)),
    known,
    now,
  );

const leftText = (signal: SignalView, margin: Pick<Margin, 'left'>): string =>
  differenceText(Math.abs(margin.left), signal, signal.resolution);

/** "Wall 6.4 °C: 1.4 °C to its low limit" */
export function marginText(signal: SignalView, margin: Pick<Margin, 'side' | 'left'>): string {
  const facts = {
    name: ownName(signal.id),
    value: valueText(signal.value ?? 0, signal),
    left: leftText(signal, margin),
  };
  if (margin.left < 0) return say(margin.side === 'low' ? 'pastLow' : 'pastHigh', facts);
  return say(margin.side === 'low' ? 'toLow' : 'toHigh', facts);
}

interface MarginProps {
  readonly signals: readonly SignalView[];
  readonly now: number;
}

/** Of the worst alarm that stands here, what its rule judges; of a station without one, what is nearest. */
export function WorstMargin({ signals, now }: MarginProps) {
  const standing = useStanding(signals, now);
  if (standing === null) return <NearestLimit signals={signals} now={now} />;
  const { signal, margin, reads } = standing;
  if (signal !== null) return <p class="margin">{marginText(signal, margin)}</p>;
  return reads === null ? null : <p class="margin">{reads}</p>;
}

type Standing =
  | {
      readonly signal: SignalView;
      readonly margin: Pick<Margin, 'side' | 'left'>;
      readonly reads: null;
    }
  | { readonly signal: null; readonly margin: null; readonly reads: string | null };

function useStanding(signals: readonly SignalView[], now: number): Standing | null {
  const board = useBoard((all) => all);
  const { alarms, coverage, rules } = board;
  const ids = new Set(signals.map(({ id }) => id));
  const here = [...alarms.values()].filter((each) => ids.has(each.signal) && !isOver(each));
  const worst = cardsOf(here, { coverage, rules }, now)[0]?.worst;
  if (worst === undefined) return null;
  const signal = signals.find(({ id }) => id === worst.signal);
  const { limit, side, unit } = worst.evidence;
  const isReading = judgedOf(worst, rules.get(worst.rule), board.signals, now).kind === 'reading';
  if (!isReading || signal === undefined || limit === null || side === null || signal.unit !== unit)
    return { signal: null, margin: null, reads: nowText(worst, board) };
  const { value } = signal;
  if (value === null || !isUsable(signal, now) || signal.unit === '1')
    return { signal: null, margin: null, reads: null };
  return {
    signal,
    margin: { side, left: side === 'low' ? value - limit : limit - value },
    reads: null,
  };
}

function NearestLimit({ signals, now }: MarginProps) {
  const rules = useBoard((board) => board.rules);
  const all = useBoard((board) => board.signals);
  const line = { rules, signals: all, idle: useIdle() };
  const worst = worstMargin(signals, line, now);
  const stands = useStands(worst);
  const unread = useUnread();
  if (worst === null) return <p class="margin">{noMarginText(signals, line, unread)}</p>;
  return (
    <p class="margin">
      {marginText(worst.signal, worst.margin)}
      {worst.margin.left < 0 && !stands ? <>. {say('pastNoAlarm')}</> : null}
    </p>
  );
}

/** Rules that judge without a distance to a limit, as of a conveyor that must run, are no silence. */
function noMarginText(
  signals: readonly SignalView[],
  line: Line,
  unread: readonly string[],
): string {
  if (anyJudged(signals, line)) return say('noMargin');
  const rules = judgingRules(signals, line).filter((id) => !unread.includes(id));
  return rules.length === 0
    ? say('nothingJudged')
    : say('judgedNoLimit', { rules: ruleNames(rules).join('; ') });
}

/** Rules of which nobody is told now, and those that wait for what has never been heard. */
function useIdle(): ReadonlySet<string> {
  const aside = useBoard((board) => board.aside);
  const coverage = useBoard((board) => board.coverage);
  return new Set([...aside.keys(), ...(coverage?.unheard ?? []).flatMap(({ rules }) => rules)]);
}

/** Rules without a usable reading. */
function useUnread(): string[] {
  const coverage = useBoard((board) => board.coverage);
  const hazards = coverage?.stations.flatMap((each) => each.hazards) ?? [];
  return hazards.flatMap(({ unread = [] }) => unread.map(({ rule }) => rule));
}

/** Does an alarm of this reading and this side stand? */
function useStands(worst: ReturnType<typeof worstMargin>): boolean {
  const alarms = useBoard((board) => board.alarms);
  return [...alarms.values()].some(
    (alarm) =>
      isOpen(alarm) &&
      !isOver(alarm) &&
      alarm.signal === worst?.signal.id &&
      alarm.evidence.side === worst.margin.side,
  );
}

export function MostUrgent({ cards }: { readonly cards: readonly StationCard[] }) {
  const first = cards[0]?.worst;
  if (first === undefined) return null;
  return (
    <div class="urgent">
      <SignalWord word={first.label.word} answered={isAnswered(first)} />
      <a href={to('alarm', first.occurrence)}>
        <Said words={alarmSentence(first)} />
      </a>
      {isOver(first) || !first.judgeable ? <When alarm={first} /> : null}
      {cards.length === 1 ? null : <span>{say('moreAlarms', { n: cards.length - 1 })}</span>}
    </div>
  );
}

/** Never "all is well". */
export function NothingHere({ station }: { readonly station: StationPlace }) {
  const count = (state: string): number =>
    station.hazards.filter((hazard) => hazard.state === state).length;
  const counts = {
    watched: count('watched'),
    unjudged: count('unjudged'),
    notWatched: count('not-watched'),
  };
  if (counts.watched > 0)
    return (
      <p class="nothing">
        {calmText(station.hazards)} {say('hazardCountsShort', counts)}
      </p>
    );
  const { unjudged, notWatched } = counts;
  return (
    <p class="nothing">
      {unjudged === 0 ? say('nothingWatched') : say('nothingReads', { unjudged, notWatched })}
    </p>
  );
}
