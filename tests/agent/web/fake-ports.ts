/**
 * Ports for tests: a small plant in memory. Everything a test wants different it sets on the fields.
 */

import type { AsideView } from '#agent/web/aside-contract.ts';
import type {
  AlarmView,
  CoverageView,
  HoldView,
  RuleView,
  SampleEvent,
  SignalView,
} from '#agent/web/contract.ts';
import type {
  AlarmAnswer,
  AlarmCommand,
  AlarmQuery,
  Figure,
  HealthParts,
  HoldAnswer,
  HoldCommand,
  HoldQuery,
  RunQuery,
  ToldEvent,
  WebPorts,
} from '#agent/web/ports.ts';
import type { RunView } from '#agent/web/run-contract.ts';
import { evidence } from './fake-evidence.ts';
import { refusedTopics } from './fake-refused.ts';
import { run } from './fake-run.ts';
import { FakeSite } from './fake-site.ts';
import { now } from './moment.ts';

export { now };

export const signal = (name = 'wall'): SignalView => ({
  id: `mounts-2/store-1/${name}`,
  line: 'mounts-2',
  station: 'store-1',
  signal: name,
  kind: 'measured',
  unit: 'Cel',
  written_unit: 'Cel',
  resolution: 0.1,
  expect_every_ms: 60_000,
  value: 6.4,
  at: now - 12_000,
  quality: { grade: 'good', cause: null },
  late_at: null,
  limits: { low_low: 5, low: 7, high: null, high_high: null },
  judged_at: [
    { rule: 'mounts-2/store-1/cold-adhesive', side: 'low', limit: 5 },
    { rule: 'mounts-2/store-1/cold-adhesive', side: 'low', limit: 7 },
  ],
});

export const alarm = (over: Partial<AlarmView> = {}): AlarmView => ({
  occurrence: `mounts-2/store-1/cold-adhesive@${now}`,
  rule: 'mounts-2/store-1/cold-adhesive',
  line: 'mounts-2',
  station: 'store-1',
  signal: 'mounts-2/store-1/wall',
  state: 'unacknowledged',
  severity: 1,
  priority: 'medium',
  highly_managed: false,
  latching: false,
  label: {
    word: 'NOTICE',
    sentence: 'Store 1: adhesive at 6.4 °C, below 7 °C, for 10 min.',
    consequence: 'Freezing breaks the dispersion. Thawing does not mend it.',
    steps: ['Close doors and gates.'],
    do_not: ['warm it with flame'],
    caution: 'Full drums crush.',
    deferral: 'Advice only; this is no safety system.',
  },
  evidence,
  raised: now,
  returned: null,
  acknowledged: null,
  shelved_until: null,
  shelved_once: false,
  shelf_minutes_max: 480,
  nuisance: null,
  judgeable: true,
  superseded_by: null,
  transitions: [
    {
      at: now,
      transition: 'raised',
      from: 'normal',
      to: 'unacknowledged',
      by: null,
      reason: null,
    },
  ],
  comments: [],
  told: [],
  ...over,
});

export const hold = (over: Partial<HoldView> = {}): HoldView => ({
  id: `container/drum-17@${now}`,
  what: 'container',
  item: 'drum-17',
  since: now,
  by: 'rule:mounts-2/store-1/freeze-suspected',
  reason: 'read 1.8 °C',
  occurrence: `mounts-2/store-1/freeze-suspected@${now}`,
  lifted: null,
  ...over,
});

export const coverage: CoverageView = {
  at: now,
  watched: 1,
  not_watched: 1,
  unjudged: 0,
  stations: [
    {
      line: 'mounts-2',
      station: 'store-1',
      kind: 'adhesive-store',
      hazards: [
        {
          hazard: 'freezing',
          to_people: false,
          state: 'watched',
          rules: ['mounts-2/store-1/cold-adhesive'],
          missing: [],
        },
        { hazard: 'heat', to_people: false, state: 'not-watched', rules: [], missing: ['air'] },
      ],
      rules: [
        {
          rule: 'mounts-2/store-1/warm-store',
          readiness: 'not-armed',
          needs: ['the upper storage temperature of the data sheet'],
        },
      ],
      moot: [],
    },
  ],
};

export const rule: RuleView = {
  id: 'mounts-2/store-1/cold-adhesive',
  line: 'mounts-2',
  station: 'store-1',
  kind: 'band',
  summary: 'A value outside its limits for a time.',
  signals: ['mounts-2/store-1/wall'],
  unit: 'Cel',
  readiness: 'armed',
  needs: [],
  settings: { low: '7 Cel', low_low: '5 Cel', on_delay: '10 min' },
  priority: ['medium', 'high'],
  word: 'NOTICE',
  highly_managed: false,
  latching: false,
  consequence: 'Freezing breaks the dispersion.',
  steps: ['Close doors and gates.'],
  do_not: ['warm it with flame'],
  basis: 'common practice, no published source',
  hazard: 'freezing',
  people: false,
  gates: [{ signal: 'm/store-1/door', low: 0, high: 0, unit: '1' }],
  hold: 'container drum-7',
};

export class FakePorts extends FakeSite implements WebPorts {
  parts: HealthParts = {
    version: '0.1.0',
    uptime_s: 12.5,
    parts: { store: 'good', intake: 'good' },
    notes: {},
  };
  allAlarms: AlarmView[] = [alarm()];
  allHolds: HoldView[] = [hold()];
  allFigures: Figure[] = [
    {
      name: 'forebond_intake_samples_total',
      kind: 'counter',
      help: 'Samples judged.',
      rows: [{ value: 7 }],
    },
  ];
  allRuns: RunView[] = [run()];
  readonly runQueries: RunQuery[] = [];
  readonly alarmCommands: AlarmCommand[] = [];
  readonly holdCommands: HoldCommand[] = [];
  readonly alarmQueries: AlarmQuery[] = [];
  readonly holdQueries: HoldQuery[] = [];
  readonly seriesAsked: [string, number, number, number][] = [];
  /** What a command answers; throw in it to fail. */
  alarmAnswer: (command: AlarmCommand) => AlarmAnswer | Promise<AlarmAnswer> = ({ occurrence }) =>
    this.allAlarms.some((one) => one.occurrence === occurrence)
      ? { outcome: 'accepted', state: 'acknowledged' }
      : { outcome: 'unknown' };
  holdAnswer: (command: HoldCommand) => HoldAnswer | Promise<HoldAnswer> = (command) => {
    if (command.verb === 'hold') {
      const { what, item, by, reason } = command;
      return { outcome: 'accepted', hold: hold({ what, item, by, reason, occurrence: null }) };
    }
    const found = this.allHolds.find((one) => one.id === command.hold);
    if (found === undefined) return { outcome: 'unknown' };
    const { by, disposition, reason } = command;
    return {
      outcome: 'accepted',
      hold: { ...found, lifted: { at: now, by, disposition, reason } },
    };
  };
  private readonly listeners = new Set<(event: ToldEvent) => void>();
  private readonly latest = new Map<string, { stamp: number; sample: SampleEvent }>();
  private stamp = 0;

  nowMs = (): number => now;
  site = () => ({ site: 'works', timezone: 'Europe/Dublin', shifts_min: [360], revision: 'r1' });
  health = (): HealthParts => this.parts;
  signals = (): SignalView[] => [
    signal('wall'),
    { ...signal('air'), value: null, at: null, quality: null },
  ];
  series: WebPorts['series'] = async (id, sinceMs, untilMs, points) => {
    this.seriesAsked.push([id, sinceMs, untilMs, points]);
    if (!this.signals().some((one) => one.id === id)) return null;
    return {
      unit: 'Cel',
      points: [
        [sinceMs, 6.1, 6.5, 6.3, 60, 1],
        [untilMs - 1, null, null, null, 0, 3],
      ],
      uncertain: [2, 0],
      damage: [{ from: sinceMs, to: sinceMs, reason: 'its checksum does not hold' }],
    };
  };
  alarms = (query: AlarmQuery): AlarmView[] => {
    this.alarmQueries.push(query);
    return this.allAlarms.slice(0, query.limit);
  };
  runs = (query: RunQuery): RunView[] => {
    this.runQueries.push(query);
    return this.allRuns.slice(0, query.limit);
  };
  run: WebPorts['run'] = async (id, points) => {
    const found = this.allRuns.find((one) => one.id === id);
    if (found === undefined) return null;
    const series = await this.series(this.signals()[0]!.id, found.opened, now + 1, points);
    return { run: found, profile: [{ signal: 'wall', unit: 'Cel', points: series!.points }] };
  };
  holds = (query: HoldQuery): HoldView[] => {
    this.holdQueries.push(query);
    return this.allHolds.slice(0, query.limit);
  };
  allAside: AsideView[] = [];
  aside = (): AsideView[] => this.allAside;
  coverage = (): CoverageView => coverage;
  refused: WebPorts['refused'] = () => refusedTopics(now);
  rules = (): RuleView[] => [rule];
  commandAlarm = async (command: AlarmCommand): Promise<AlarmAnswer> => {
    this.alarmCommands.push(command);
    return this.alarmAnswer(command);
  };
  commandHold = async (command: HoldCommand): Promise<HoldAnswer> => {
    this.holdCommands.push(command);
    return this.holdAnswer(command);
  };
  samplesSince = (cursor: number) => ({
    cursor: this.stamp,
    samples: [...this.latest.values()].filter((one) => one.stamp > cursor).map((one) => one.sample),
  });
  subscribe = (listener: (event: ToldEvent) => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  figures = (): Figure[] => this.allFigures;

  get listening(): number {
    return this.listeners.size;
  }
  tell(event: ToldEvent): void {
    for (const listener of this.listeners) listener(event);
  }
  sample(name: string, value: number, at = now): void {
    const id = `mounts-2/store-1/${name}`;
    const quality = { grade: 'good', cause: null } as const;
    const sample = { signal: id, at, value, unit: 'Cel', quality };
    this.latest.set(id, { stamp: ++this.stamp, sample });
  }
}
