/** Four places, text only; on an alarm nobody has answered it gives way to the answer. */

import { isAnswered, isSuperseded } from '../judge/bands.ts';
import type { Place } from '../router.ts';
import { useBoard } from '../state/board.ts';
import { say } from '../text/say.ts';
import { AnswerBar } from './answer-bar.tsx';

const behindBack = [
  ...['holds', 'aside', 'runs', 'run', 'coverage', 'rules', 'performance'],
  ...['telling', 'phone', 'reader', 'me', 'people'],
];
const places = [
  ['', 'attention', ['alarm']],
  ['line', 'line', ['station', 'signal']],
  ['due', 'due', []],
  ['back', 'lookBack', behindBack],
] as const;

export function Foot({ place }: { readonly place: Place }) {
  const alarm = useBoard((board) =>
    place.name === 'alarm' ? (board.alarms.get(place.parts[0] ?? '') ?? null) : null,
  );
  const kept = useBoard((board) => board.kept);
  if (alarm !== null && !isAnswered(alarm) && !isSuperseded(alarm))
    return kept === null ? (
      <AnswerBar key={alarm.occurrence} alarm={alarm} />
    ) : (
      <p class="answer-bar" role="status">
        {say('keptNoAnswer')}
      </p>
    );
  return (
    <nav class="foot" aria-label={say('places')}>
      {places.map(([name, text, within]) => {
        const here = place.name === name || within.some((each) => each === place.name);
        return (
          <a key={name} href={`#/${name}`} aria-current={here ? 'page' : undefined}>
            {say(text)}
          </a>
        );
      })}
    </nav>
  );
}
