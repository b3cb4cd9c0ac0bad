/** Whose line it is and when it was last heard; what is stale; a box that is itself ill. */

import { isOpen } from '../judge/bands.ts';
import { to, usePlace } from '../router.ts';
import { useBoard, useTold } from '../state/board.ts';
import { nowMs, readLink, useNow, useStale } from '../state/link.ts';
import { clock, foreignZone, hourMinuteSecond, span } from '../text/clock.ts';
import { briefOf, type IllPart, isShort, partName } from '../text/ill.ts';
import { ownName, spokenId } from '../text/names.ts';
import { say } from '../text/say.ts';
import { AgentText, Around, here } from './agent-text.tsx';

/** Where the first screen belongs to an alarm: its page, and the list of those that stand. */
const forAlarms: readonly string[] = ['', 'alarm'];

/** On an alarm's own page nothing but the alarm stands on the first screen. */
export function TopLine() {
  const { name } = usePlace();
  const harm = useHarm();
  const site = useBoard((board) => board.site);
  const stale = useStale();
  // When the agent was heard, not what time it is: a dead one must not seem to speak.
  const heardAt = useNow() - (Date.now() - (readLink().heardAt ?? Date.now()));
  return (
    <header class="top">
      <div class="top-row">
        <a class="site" href="#/">
          {site === null ? 'Forebond' : ownName(site.site)}
        </a>
        {site === null || stale ? null : (
          <span class="heard">{say('heard', { clock: hourMinuteSecond(heardAt) })}</span>
        )}
      </div>
      {name === 'alarm' ? null : <Zone />}
      {stale && site !== null ? <Stale /> : null}
      <Unread />
      {name === 'alarm' ? null : <Counts />}
      {name === 'alarm' || (harm && forAlarms.includes(name)) ? null : <Health />}
    </header>
  );
}

/** Whose time it is, where it is not that of whoever reads. */
function Zone() {
  const known = useBoard((board) => board.site !== null);
  const zone = known ? foreignZone() : null;
  return zone === null ? null : <p class="zone">{say('zone', { zone })}</p>;
}

/** Does something stand by which people can be hurt? The care of the box comes below it. */
const useHarm = (): boolean =>
  useBoard((board) =>
    [...board.alarms.values()].some((each) => isOpen(each) && each.label.word !== 'NOTICE'),
  );

/** What gave way to an alarm on the first screen. */
export function BelowAlarms({ counts = false }: { readonly counts?: boolean }) {
  const harm = useHarm();
  return (
    <footer class="below">
      {counts ? <Zone /> : null}
      {counts ? <Counts /> : null}
      {counts || harm ? <Health /> : null}
    </footer>
  );
}

/** How old, by the phone's own clock, which does not stop. */
function Stale() {
  const age = useTold(() => Math.floor((Date.now() - (readLink().heardAt ?? Date.now())) / 1_000));
  return (
    <div class="stale" role="status">
      <strong>
        {say('staleLine', {
          clock: clock(nowMs(), nowMs() + age * 1_000),
          age: span(age * 1_000),
        })}
      </strong>
      <span>{say('staleWhat')}</span>
    </div>
  );
}

/** The agent answers, and refuses to be read: what stands here may be old, or nothing may. */
function Unread() {
  const problem = useBoard((board) => board.problem);
  return problem === null ? null : (
    <p class="outcome" role="alert">
      <strong>{say('unread')}</strong> <span lang="en">{problem}</span>
    </p>
  );
}

function Counts() {
  const coverage = useBoard((board) => board.coverage);
  if (coverage === null) return null;
  const { watched, not_watched, unjudged } = coverage;
  const partly = coverage.stations
    .flatMap(({ hazards }) => hazards)
    .filter(({ state, aside = [] }) => state !== 'not-watched' && aside.length > 0).length;
  return (
    <a class="counts" href={to('coverage')}>
      <span>{say('watched', { n: watched })}</span>
      <span>{say('notWatched', { n: not_watched })}</span>
      {partly === 0 ? null : <span>{say('partlyWatched', { n: partly })}</span>}
      {unjudged === 0 ? null : <span>{say('noReading', { n: unjudged })}</span>}
    </a>
  );
}

/** Sensors are spoken of where they are missed; the rest of the box is spoken of here. */
function Health() {
  const health = useBoard((board) => board.health);
  const ill = Object.entries(health?.parts ?? {}).filter(
    ([part, condition]) => condition !== 'good' && part !== 'sensors',
  );
  return ill.length === 0 ? null : (
    <ul class="ill">
      {ill.map(([part, condition]) => (
        <li key={part}>
          <Ill part={part} condition={condition} note={noteOf(part, health?.notes[part] ?? '')} />
        </li>
      ))}
    </ul>
  );
}

/** Rules by the names that people call them. */
const noteOf = (part: string, note: string): string => (part === 'rules' ? spokenId(note) : note);

function Ill(ill: IllPart) {
  const name = partName(ill.part);
  const words = <AgentText text={ill.note} />;
  if (isShort(ill))
    return <Around sentence={say('boxIll', { part: name, note: here })} words={words} />;
  return (
    <details class="more">
      <summary>{say('boxIll', { part: name, note: briefOf(ill) })}</summary>
      <p>{words}</p>
    </details>
  );
}
