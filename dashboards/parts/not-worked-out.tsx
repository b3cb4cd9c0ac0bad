/** Signals worked out from others that have no value now, or do not exist for want of a number. */
import type { CoverageView } from '../../agent/web/contract.ts';
import { placeName } from '../text/names.ts';
import { say } from '../text/say.ts';
import { Around, here } from './agent-text.tsx';

interface NotWorkedOutProps {
  readonly stations: CoverageView['stations'];
}

export function NotWorkedOut({ stations }: NotWorkedOutProps) {
  const without = stations
    .flatMap((station) => station.worked_out ?? [])
    .flatMap(({ signal, why }) => (why === null ? [] : [{ signal, why }]));
  const lacking = stations.flatMap((station) => station.not_worked_out ?? []);
  if (without.length === 0 && lacking.length === 0) return null;
  return (
    <section>
      <h2>{say('noValueTitle')}</h2>
      <p>{say('noValueSays')}</p>
      <ul class="plain-list">
        {without.map(({ signal, why }) => (
          <li key={signal}>
            {placeName(signal)}
            <span class="hint" lang="en">
              {why}
            </span>
          </li>
        ))}
        {lacking.map(({ signal, needs }) => (
          <li key={signal}>
            {placeName(signal)}
            <span class="hint">
              <Around
                sentence={say('notBuilt', { needs: here })}
                words={<span lang="en">{needs.join('; ')}</span>}
              />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
