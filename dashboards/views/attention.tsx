/** What is wrong, in three bands: people first, then time; after all that stands what is over, folded. */
import type { AsideView } from '../../agent/web/contract.ts';
import { type Band, bands, isOpen, isOver, isPeopleRule } from '../judge/bands.ts';
import { type Card, cardsInBands } from '../judge/cards.ts';
import { areAllUntold } from '../judge/reached.ts';
import { shiftEnd } from '../judge/shift.ts';
import { AsideLines } from '../parts/aside-lines.tsx';
import { Entry } from '../parts/entry.tsx';
import { NamesTaken } from '../parts/names-taken.tsx';
import { BelowAlarms } from '../parts/top-line.tsx';
import { Unheard } from '../parts/unheard.tsx';
import { useBoard } from '../state/board.ts';
import { useNow } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { useSteady } from '../state/steady.ts';
import { calmText } from '../text/calm.ts';
import { clock, hourMinute } from '../text/clock.ts';
import { say } from '../text/say.ts';

type Order = Record<Band, Card[]>;

export function Attention() {
  const alarms = useBoard((board) => board.alarms);
  const coverage = useBoard((board) => board.coverage);
  const rules = useBoard((board) => board.rules);
  const site = useBoard((board) => board.site);
  const { shiftsMin } = usePreferences();
  const now = useNow(10_000);
  const timezone = site?.timezone ?? 'UTC';
  const end = shiftEnd(now, timezone, shiftsMin ?? site?.shifts_min ?? []);
  const order = cardsInBands(alarms.values(), { coverage, rules }, end);
  const { shown, held, show } = useSteady(order, keyOf);
  const hushed = areAllUntold([...alarms.values()], now);
  const aside = [...useBoard((board) => board.aside).values()];
  const known = { coverage, rules };
  const [asidePeople = [], asideOthers = []] = parted(aside, (each) => isPeopleRule(each, known));
  const spokenFor = new Set([...alarms.values()].filter(isOpen).map(({ signal }) => signal));
  return (
    <>
      <h1 class="unseen">{say('attention')}</h1>
      {held ? (
        <button type="button" class="order-changed" onClick={show}>
          {say('orderChanged')}
        </button>
      ) : null}
      {bands.every((band) => shown[band].length === 0) ? <Nothing /> : null}
      {hushed ? <p class="missing">{say('toldNobodyOfAll')}</p> : null}
      <Unheard coverage={coverage} people spokenFor={spokenFor} />
      <NamesTaken coverage={coverage} people />
      <div class="bands">
        {standing.map((band) => (
          <BandOf
            key={band}
            title={titleOf(band, end, now)}
            band={band}
            cards={shown[band]}
            aside={band === 'people' ? asidePeople : none}
            hushed={hushed}
          />
        ))}
      </div>
      <Unheard coverage={coverage} people={false} spokenFor={spokenFor} />
      <NamesTaken coverage={coverage} people={false} />
      <Over cards={shown.over} />
      {asideOthers.length === 0 ? null : (
        <section class="band">
          <h2 class="band-title">{say('aside')}</h2>
          <AsideLines aside={asideOthers} />
        </section>
      )}
      <BelowAlarms />
      <p class="advice">{say('advice')}</p>
    </>
  );
}

const keyOf = (order: Order): string => bands.map((band) => order[band].join(' ')).join('|');

type Standing = Exclude<Band, 'over'>;
const standing: readonly Standing[] = ['people', 'shift', 'wait'];
const none: readonly AsideView[] = [];

/** Those of which it is true, and the others. */
const parted = <T,>(all: readonly T[], is: (each: T) => boolean): [T[], T[]] => [
  all.filter(is),
  all.filter((each) => !is(each)),
];

const titleOf = (band: Standing, end: number, now: number): string =>
  band === 'shift' ? say('shift', { clock: clock(end, now) }) : say(band);

interface BandProps {
  readonly band: Standing;
  readonly title: string;
  readonly cards: readonly Card[];
  /** Of this band, and put aside: they stand first, a line each. */
  readonly aside: readonly AsideView[];
  readonly hushed: boolean;
}

function BandOf({ band, title, cards, aside, hushed }: BandProps) {
  if (cards.length === 0 && aside.length === 0) return null;
  return (
    <section class={`band band-${band}`}>
      <h2 class="band-title">{title}</h2>
      <AsideLines aside={aside} />
      <Cards cards={cards} short={band === 'wait'} hushed={hushed} />
    </section>
  );
}

/** Nothing of these stands: they wait for an answer or a reset. */
const Over = ({ cards }: { readonly cards: readonly Card[] }) =>
  cards.length === 0 ? null : (
    <details class="more band-over">
      <summary>{say('overNotices', { n: cards.length })}</summary>
      <Cards cards={cards} short hushed />
    </details>
  );

interface CardsProps {
  readonly cards: readonly Card[];
  readonly short: boolean;
  readonly hushed: boolean;
}

function Cards({ cards, short, hushed }: CardsProps) {
  const alarms = useBoard((board) => board.alarms);
  return (
    <ul class="entries">
      {cards.map((card) => {
        const [worst, ...also] = card.flatMap((each) => alarms.get(each) ?? []);
        return worst === undefined ? null : (
          <Entry
            key={worst.occurrence}
            alarm={worst}
            also={also}
            short={short || isOver(worst)}
            hushed={hushed}
          />
        );
      })}
    </ul>
  );
}

/** Never "all is well": what is watched, what is not, and when it was last looked at. */
function Nothing() {
  const coverage = useBoard((board) => board.coverage);
  const now = useNow(60_000);
  if (coverage === null) return null;
  return (
    <p class="empty">
      {calmText(coverage.stations.flatMap(({ hazards }) => hazards))}{' '}
      {say('hazardCounts', {
        watched: coverage.watched,
        notWatched: coverage.not_watched,
        unjudged: coverage.unjudged,
        clock: hourMinute(now),
      })}
    </p>
  );
}
