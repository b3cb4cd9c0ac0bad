/**
 * The signal-word panel after ANSI Z535.4: word and colour, and the safety alert symbol where people
 * can be hurt. Filled while nobody has answered, outlined after, without colour once it is closed.
 */
import type { AlarmView } from '../../agent/web/contract.ts';
import { say } from '../text/say.ts';

interface SignalWordProps {
  readonly word: AlarmView['label']['word'];
  readonly answered: boolean;
  readonly wide?: boolean;
  /** It stands no more: without its colour. */
  readonly closed?: boolean;
}

export function SignalWord({ word, answered, wide = false, closed = false }: SignalWordProps) {
  const classes = ['word', closed ? 'word-closed' : `word-${word.toLowerCase()}`];
  if (answered) classes.push('word-answered');
  if (wide) classes.push('word-wide');
  return (
    <span class={classes.join(' ')}>
      {word === 'NOTICE' ? null : (
        <svg class="alert-symbol" viewBox="0 0 24 22" aria-hidden="true">
          <path class="alert-triangle" d="M12 1 23.4 21H.6Z" />
          <path
            class="alert-mark"
            d="M10.7 7h2.6l-.5 7.6h-1.6ZM12 15.8a1.5 1.5 0 1 1 0 3 1.5 1.5 0 0 1 0-3Z"
          />
        </svg>
      )}
      {say('word')[word]}
    </span>
  );
}
