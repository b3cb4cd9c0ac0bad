/**
 * Alarms as the cards people see: those of one reading past one side of its window are one thing,
 * with the worst on top and the others folded below it.
 *
 * Always true: every open alarm stands in exactly one card; a card is unanswered while one of its
 * alarms is, and ranks as the most urgent of them.
 */
import type { AlarmView } from '../../agent/web/contract.ts';
import {
  type Band,
  bandOf,
  bands,
  isAnswered,
  isOpen,
  isOver,
  type Known,
  mattersAt,
} from './bands.ts';

/** Occurrences, the worst first. */
export type Card = readonly [string, ...string[]];

type Alarms = readonly [AlarmView, ...AlarmView[]];

const words = ['DANGER', 'WARNING', 'CAUTION', 'NOTICE'];
const priorities = ['high', 'medium', 'low'];
const wordRank = ({ label }: AlarmView): number => words.indexOf(label.word);

/** Its number went back and it does not latch: nothing of it stands. */
const isGone = (alarm: AlarmView): boolean => isOver(alarm) && alarm.state.startsWith('returned-');

/** Who can be hurt, whether it stands, how soon to act, and how far out its limit lies. */
function worstFirst(a: AlarmView, b: AlarmView): number {
  const reach = ({ evidence: { limit, side } }: AlarmView): number =>
    limit === null ? 0 : side === 'low' ? limit : -limit;
  return (
    wordRank(a) - wordRank(b) ||
    Number(isGone(a)) - Number(isGone(b)) ||
    priorities.indexOf(a.priority) - priorities.indexOf(b.priority) ||
    reach(a) - reach(b) ||
    (a.occurrence < b.occurrence ? -1 : 1)
  );
}

/** A sensor's own silence or standstill has no side, and is no other alarm's matter. */
const keyOf = ({ signal, occurrence, evidence: { side } }: AlarmView): string =>
  side === null ? occurrence : `${signal} ${side}`;

/** The other open alarms of its card, the worst first. */
export const besides = (alarm: AlarmView, alarms: Iterable<AlarmView>): AlarmView[] =>
  [...alarms]
    .filter(
      (each) =>
        isOpen(each) && each.occurrence !== alarm.occurrence && keyOf(each) === keyOf(alarm),
    )
    .sort(worstFirst);

/** The worst alarm of its card that stands, where it is worse than this one. */
export const worseStanding = (
  alarm: AlarmView,
  alarms: Iterable<AlarmView>,
): AlarmView | undefined =>
  besides(alarm, alarms).find((each) => !isOver(each) && worstFirst(each, alarm) < 0);

/** What still wants an answer: over counts as answered for, unless it latched. */
const isWaiting = (alarm: AlarmView): boolean => !isAnswered(alarm) && !isGone(alarm);

/** Who can be hurt, then what wants an answer, then by when it starts to matter. */
function inOrder(a: Alarms, b: Alarms): number {
  const waits = (alarms: Alarms): number => (alarms.some(isWaiting) ? 0 : 1);
  const when = (alarms: Alarms): number => Math.min(...alarms.map(mattersAt));
  return (
    wordRank(a[0]) - wordRank(b[0]) ||
    waits(a) - waits(b) ||
    when(a) - when(b) ||
    (a[0].occurrence < b[0].occurrence ? -1 : 1)
  );
}

/** In the order they are shown. `shiftEnd`: engine time. */
export function cardsInBands(
  alarms: Iterable<AlarmView>,
  known: Known,
  shiftEnd: number,
): Record<Band, Card[]> {
  const found: Record<Band, Alarms[]> = { people: [], shift: [], wait: [], over: [] };
  const groups = Map.groupBy([...alarms].filter(isOpen), keyOf);
  for (const group of groups.values()) {
    const [worst, ...others] = group.sort(worstFirst);
    if (worst === undefined) continue;
    const within = group.map((alarm) => bandOf(alarm, known, shiftEnd));
    found[bands.find((band) => within.includes(band))!].push([worst, ...others]);
  }
  const shown = (band: Band): Card[] =>
    found[band]
      .sort(inOrder)
      .map(([worst, ...others]) => [worst.occurrence, ...others.map((each) => each.occurrence)]);
  return {
    people: shown('people'),
    shift: shown('shift'),
    wait: shown('wait'),
    over: shown('over'),
  };
}
