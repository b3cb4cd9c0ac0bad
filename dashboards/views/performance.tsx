/** Alarm performance: whether there are more alarms than people can answer, and which. */
import type { LoadView } from '../../agent/web/contract.ts';
import { NotRead } from '../parts/not-read.tsx';
import { get } from '../state/api.ts';
import { useNow } from '../state/link.ts';
import { useRead } from '../state/read.ts';
import { clock, span } from '../text/clock.ts';
import { localNumber } from '../text/language.ts';
import { placeName } from '../text/names.ts';
import { say } from '../text/say.ts';

export function PerformancePage() {
  const read = useRead(() => get<LoadView>('/api/performance'), []);
  return (
    <article>
      <h1>{say('performance')}</h1>
      <p>{say('performanceSays')}</p>
      <NotRead read={read} />
      {read.found === null ? null : <Figures load={read.found} />}
    </article>
  );
}

const count = (value: number): string => localNumber(String(Number(value.toFixed(1))));
const share = (value: number): string => `${count(100 * value)}\u00a0%`;

function Figures({ load }: { readonly load: LoadView }) {
  const now = useNow(60_000);
  const { figures, shifts } = load;
  return (
    <>
      <p>{countedText(load, now)}</p>
      {load.enough ? null : <p>{say('performanceShort')}</p>}
      <LoadTable load={load} />
      <Rows
        title={say('mostFrequent')}
        rows={figures.top_ten.map(({ rule, count: n }) =>
          say('mostFrequentEach', { rule: placeName(rule), n }),
        )}
      />
      <Rows
        title={say('standingNow')}
        rows={figures.standing.map(({ rule, since }) =>
          say('standingEach', { rule: placeName(rule), clock: clock(since, now) }),
        )}
      />
      <Rows
        title={say('wasNeeded')}
        rows={load.needed.map(({ rule, yes, no }) =>
          say('wasNeededEach', { rule: placeName(rule), yes, no }),
        )}
      />
      <Rows title={say('answeredIn')} rows={answered(load)} />
      <Rows
        title={say('byShift')}
        rows={shifts.map(({ begins_min, told, per_hour, hours }) =>
          hours === 0
            ? say('byShiftNone', { clock: dayClock(begins_min) })
            : say('byShiftEach', { clock: dayClock(begins_min), n: told, rate: count(per_hour) }),
        )}
      />
    </>
  );
}

/** The span that lies behind the figures: the record may be shorter than what was asked. */
const countedText = ({ since, counted_from: from = since, until }: LoadView, now: number): string =>
  say('countedFrom', {
    from: clock(from, now),
    until: clock(until, now),
    span: span(until - from),
  });

const dayClock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

const priorities = ['high', 'medium', 'low'] as const;

const answered = ({ figures }: LoadView): string[] =>
  priorities.flatMap((priority) => {
    const each = figures.by_priority[priority];
    const facts = { priority: say('loadPriority')[priority], unanswered: each.unanswered };
    if (each.count === 0) return [];
    if (each.median_ms === null || each.slowest_tenth_ms === null)
      return [say('answeredNone', facts)];
    return [
      say('answeredEach', {
        ...facts,
        median: span(each.median_ms),
        slowest: span(each.slowest_tenth_ms),
      }),
    ];
  });

/** What is counted, how much of it, and the guidance beside it. */
type Figure = readonly [name: string, value: string, guidance: string];

function figuresOf({ figures, guidance }: LoadView): Figure[] {
  const most = (n: string | number): string => say('atMost', { n });
  return [
    [say('loadTold'), String(figures.told), ''],
    [say('loadPerDay'), count(figures.per_day), most(guidance.per_day.acceptable)],
    [say('loadPerHour'), count(figures.per_hour), most(guidance.per_hour.acceptable)],
    [say('loadMost'), String(figures.most_in_ten_minutes), most(guidance.most_in_ten_minutes)],
    [say('loadFloods'), String(figures.floods.length), ''],
    [say('loadInFlood'), share(figures.share_in_flood), most(share(guidance.share_in_flood))],
    [say('loadTopTen'), share(figures.share_of_top_ten), most(share(guidance.share_of_top_ten))],
    [say('loadChattering'), String(figures.chattering.length), say('noneWanted')],
    [say('loadFleeting'), String(figures.fleeting.reduce((n, each) => n + each.count, 0)), ''],
    [say('loadStanding'), String(figures.standing.length), most(guidance.standing)],
    ...priorities.map(
      (priority): Figure => [
        say('loadPriority')[priority],
        share(figures.by_priority[priority].share),
        say('about', { n: share(guidance.by_priority[priority]) }),
      ],
    ),
  ];
}

/** A line each: words wrap between words, at any width and any size of text. */
const LoadTable = ({ load }: { readonly load: LoadView }) => (
  <dl class="load">
    {figuresOf(load).map(([name, value, guidance]) => (
      <div key={name}>
        <dt>{name}</dt>
        <dd>
          <strong>{value}</strong>
        </dd>
        {guidance === '' ? null : <dd class="hint">{guidance}</dd>}
      </div>
    ))}
  </dl>
);

interface RowsProps {
  readonly title: string;
  readonly rows: readonly string[];
}

const Rows = ({ title, rows }: RowsProps) =>
  rows.length === 0 ? null : (
    <section>
      <h2>{title}</h2>
      <ul class="plain-list">
        {rows.map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
    </section>
  );
