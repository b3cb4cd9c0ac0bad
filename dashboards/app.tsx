/** The frame: top line, the view of the place, the foot; and what a screen reader is told unasked. */
import type { ComponentChild } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Door } from './parts/door.tsx';
import { Foot } from './parts/foot.tsx';
import { Said } from './parts/said.tsx';
import { TopLine } from './parts/top-line.tsx';
import { type Place, usePlace } from './router.ts';
import { type Announcement, readAnnounced } from './state/announce.ts';
import { useBoard, useTold } from './state/board.ts';
import { useNow } from './state/link.ts';
import { usePreferences } from './state/preferences.ts';
import { needsSignIn, useSession } from './state/session.ts';
import { languageNow } from './text/language.ts';
import { say } from './text/say.ts';
import { AlarmPage } from './views/alarm.tsx';
import { Aside } from './views/aside.tsx';
import { Attention } from './views/attention.tsx';
import { CoveragePage } from './views/coverage.tsx';
import { Due } from './views/due.tsx';
import { Holds } from './views/holds.tsx';
import { LinePage } from './views/line.tsx';
import { LookBack } from './views/look-back.tsx';
import { Me } from './views/me.tsx';
import { People } from './views/people.tsx';
import { PerformancePage } from './views/performance.tsx';
import { Phone } from './views/phone.tsx';
import { Reader } from './views/reader.tsx';
import { RulesPage } from './views/rules.tsx';
import { RunPage } from './views/run.tsx';
import { Runs } from './views/runs.tsx';
import { SignalPage } from './views/signal.tsx';
import { StationPage } from './views/station.tsx';
import { Telling } from './views/telling.tsx';

const views: Readonly<Record<string, (place: Place) => ComponentChild>> = {
  '': () => <Attention />,
  alarm: ({ parts }) => <AlarmPage key={parts[0]} occurrence={parts[0] ?? ''} />,
  line: ({ parts }) => <LinePage line={parts[0] ?? null} />,
  station: ({ parts }) => <StationPage id={parts[0] ?? ''} />,
  signal: ({ parts, query }) => (
    <SignalPage key={parts[0]} id={parts[0] ?? ''} span={query.get('span')} />
  ),
  due: () => <Due />,
  back: () => <LookBack />,
  runs: () => <Runs />,
  run: ({ parts }) => <RunPage key={parts[0]} id={parts[0] ?? ''} />,
  aside: () => <Aside />,
  holds: ({ query }) => <Holds item={query.get('item')} />,
  coverage: () => <CoveragePage />,
  rules: () => <RulesPage />,
  performance: () => <PerformancePage />,
  phone: () => <Phone />,
  telling: () => <Telling />,
  me: () => <Me />,
  people: () => <People />,
  reader: () => <Reader />,
};

export function App() {
  const place = usePlace();
  usePreferences();
  useTold(languageNow);
  const loaded = useBoard(({ loads, kept }) => loads > 0 || kept !== null);
  const content = useRef<HTMLElement>(null);
  const path = `${place.name}/${place.parts.join('/')}`;
  const first = useRef(true);
  useEffect(() => {
    if (first.current) first.current = false;
    else {
      window.scrollTo(0, 0);
      content.current?.focus({ preventScroll: true });
    }
  }, [path]);
  const session = useSession();
  if (place.name === 'invitation' || needsSignIn(session)) return <Door place={place} />;
  const view = views[place.name];
  return (
    <>
      <button type="button" class="skip" onClick={() => content.current?.focus()}>
        {say('skip')}
      </button>
      <TopLine />
      <main id="content" tabIndex={-1} ref={content}>
        {!loaded ? <Waiting /> : view === undefined ? <p>{say('noSuchPlace')}</p> : view(place)}
      </main>
      <Foot place={place} />
      <LiveRegions />
    </>
  );
}

function Waiting() {
  const now = useNow();
  const began = useRef(now);
  const refused = useBoard(({ problem }) => problem !== null);
  const isLong = now - began.current > 5_000 && !refused;
  return <p class="empty">{say(isLong ? 'waitingLong' : 'waiting')}</p>;
}

const Spoken = ({ said: { before, sentence, after } }: { readonly said: Announcement }) => (
  <>
    {before}
    <Said words={sentence} />
    {after}
  </>
);

function LiveRegions() {
  const { assertive, polite } = useTold(readAnnounced);
  return (
    <>
      <div class="unseen" aria-live="assertive">
        <Spoken said={assertive} />
      </div>
      <div class="unseen" aria-live="polite">
        <Spoken said={polite} />
      </div>
    </>
  );
}
