/** What is wrong, in three bands: people first, then time. */
import { type Band, bands, isAside, isOpen, isOver } from '../judge/bands.ts';
import { type Card, cardsInBands } from '../judge/cards.ts';
import { shiftEnd } from '../judge/shift.ts';
import { Entry } from '../parts/entry.tsx';
import { Unheard } from '../parts/unheard.tsx';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { useNow } from '../state/link.ts';
import { usePreferences } from '../state/preferences.ts';
import { useSteady } from '../state/steady.ts';
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
  const aside = [...alarms.values()].filter(isAside);
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
      <Unheard coverage={coverage} people spokenFor={spokenFor} />
      <div class="bands">
        {bands.map((band) => (
          <BandOf key={band} band={band} title={titleOf(band, end, now)} cards={shown[band]} />
        ))}
      </div>
      <Unheard coverage={coverage} people={false} spokenFor={spokenFor} />
      {aside.length === 0 ? null : (
        <section class="band">
          <h2 class="band-title">{say('aside')}</h2>
          <p>
            <a href={to('aside')}>{say('putAside')}</a>
          </p>
          <ul class="entries">
            {aside.map((alarm) => (
              <Entry key={alarm.occurrence} alarm={alarm} short />
            ))}
          </ul>
        </section>
      )}
      <p class="advice">{say('advice')}</p>
    </>
  );
}

const keyOf = (order: Order): string => bands.map((band) => order[band].join(' ')).join('|');

const titleOf = (band: Band, end: number, now: number): string =>
  band === 'shift' ? say('shift', { clock: clock(end, now) }) : say(band);

interface BandProps {
  readonly band: Band;
  readonly title: string;
  readonly cards: readonly Card[];
}

function BandOf({ band, title, cards }: BandProps) {
  const alarms = useBoard((board) => board.alarms);
  if (cards.length === 0) return null;
  return (
    <section class={`band band-${band}`}>
      <h2 class="band-title">{title}</h2>
      <ul class="entries">
        {cards.map((card) => {
          const [worst, ...also] = card.flatMap((each) => alarms.get(each) ?? []);
          return worst === undefined ? null : (
            <Entry key={worst.occurrence} alarm={worst} also={also} short={isOver(worst)} />
          );
        })}
      </ul>
    </section>
  );
}

/** Never "all is well": what is watched, what is not, and when it was last looked at. */
function Nothing() {
  const coverage = useBoard((board) => board.coverage);
  const now = useNow(60_000);
  if (coverage === null) return null;
  return (
    <p class="empty">
      {say('nothingAbnormal', {
        watched: coverage.watched,
        notWatched: coverage.not_watched,
        unjudged: coverage.unjudged,
        clock: hourMinute(now),
      })}
    </p>
  );
}
