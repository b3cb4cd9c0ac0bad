/** What is to be written down or read by hand within a day, each with its station. */
import { type Round, roundsOf } from '../judge/rounds.ts';
import { to } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { nowMs, useNow } from '../state/link.ts';
import { useMarks } from '../state/marks.ts';
import { clock } from '../text/clock.ts';
import { ownName, placeName } from '../text/names.ts';
import { say } from '../text/say.ts';
import { clockText } from './clock-text.ts';
import { NotRead } from './not-read.tsx';

/** So many at most; the rest is counted. */
const shownMax = 20;

export function Rounds() {
  useNow(60_000);
  const read = useMarks(null);
  const signals = useBoard((board) => board.signals);
  const rounds = roundsOf(read.found?.clocks ?? [], signals.values(), nowMs());
  return (
    <section>
      <h2>{say('dueRounds')}</h2>
      <p class="hint">{say('dueRoundsSays')}</p>
      <NotRead read={read} />
      {read.found !== null && rounds.length === 0 ? <p>{say('dueRoundsNone')}</p> : null}
      <ul class="plain-list">
        {rounds.slice(0, shownMax).map((round) => (
          <RoundRow key={keyOf(round)} round={round} />
        ))}
      </ul>
      {rounds.length <= shownMax ? null : (
        <p>{say('unheardMore', { n: rounds.length - shownMax })}</p>
      )}
    </section>
  );
}

const keyOf = (round: Round): string =>
  round.kind === 'clock' ? `${round.clock.rule} ${round.clock.item ?? ''}` : round.signal.id;

function RoundRow({ round }: { readonly round: Round }) {
  const { line, station } = round.kind === 'clock' ? round.clock : round.signal;
  const id = `${line}/${station}`;
  return (
    <li>
      <a href={to('station', id)}>{placeName(id)}</a> <span>{roundText(round, nowMs())}</span>
    </li>
  );
}

function roundText(round: Round, now: number): string {
  if (round.kind === 'clock') return clockText(round.clock, now);
  const { signal, due } = round;
  const reading = ownName(signal.id);
  if (due === null) return say('roundNever', { reading });
  return say(now >= due ? 'roundOver' : 'roundDue', { reading, due: clock(due, now) });
}
