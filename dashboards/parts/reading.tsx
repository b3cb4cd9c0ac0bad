/** A value with its unit, its time and its quality; or, in words, why there is none. */
import type { SignalView } from '../../agent/web/contract.ts';
import { readingState } from '../judge/reading.ts';
import { stateWord } from '../judge/states.ts';
import { useBoard } from '../state/board.ts';
import { useNow } from '../state/link.ts';
import { clock, span } from '../text/clock.ts';
import { valueText } from '../text/difference.ts';
import { say } from '../text/say.ts';
import { AgentText, Around, here } from './agent-text.tsx';

export function Reading({ signal }: { readonly signal: SignalView }) {
  const now = useNow();
  const state = readingState(signal, now);
  switch (state.kind) {
    case 'none':
      return <span class="missing">{say('noReadingYet')}</span>;
    case 'silent':
      return (
        <span class="missing">{say('noReadingSince', { clock: clock(state.since, now) })}</span>
      );
    case 'unusable':
      return (
        <span class="missing">
          <Around
            sentence={say('notUsable', { cause: here })}
            words={<AgentText text={state.cause} />}
          />
        </span>
      );
    case 'usable':
      return (
        <span class="reading">
          <Value signal={signal} />
          {state.uncertain === null ? null : (
            <span class="missing">
              <Around
                sentence={say('uncertain', { cause: here })}
                words={<AgentText text={state.uncertain} />}
              />
            </span>
          )}
          <span class="age">{say('ago', { span: span(now - state.at) })}</span>
        </span>
      );
  }
}

/** Estimated values wear it; a plain difference of two readings is none. */
function Value({ signal }: { readonly signal: SignalView }) {
  const rules = useBoard((board) => board.rules);
  const { value, kind } = signal;
  const state = stateWord(signal, rules);
  const text = value === null ? '' : valueText(value, signal);
  return (
    <span class="value">
      {state === null ? text : say('state')[state]}
      {kind === 'derived' && signal.unit !== 'K' ? <small> {say('estimated')}</small> : null}
      {kind === 'manual' ? <small> {say('handReading')}</small> : null}
    </span>
  );
}
