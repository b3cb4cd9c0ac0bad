/**
 * A record of time gone by, made by the agent's own core on a clock of its own: the same intake,
 * engine, desk and store, far faster than time. What it leaves replays like any other folder.
 */
import type { Effect } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { SiteSource } from '../site/revision.ts';
import { openStore } from '../store/store.ts';
import { Core } from './core.ts';

/** What arrives at one moment. */
export interface Arrivals {
  readonly messages: readonly { readonly topic: string; readonly payload: string }[];
}

/** Whoever answers the alarms of the record; null where nobody is there any more. */
export interface Answering {
  readonly by: string;
  /** So long after an alarm is raised it is acknowledged, and a latched one reset after that. */
  readonly acknowledgeMs: number;
  readonly resetMs: number;
  readonly liftMs: number;
  /** From this moment on only what is over is answered, and from `awayMs` on nothing. */
  readonly untilMs: EpochMs;
  readonly awayMs: EpochMs;
}

export interface HistoryOptions {
  readonly folder: string;
  readonly source: SiteSource;
  readonly version: string;
  readonly fromMs: EpochMs;
  /** Asked anew at every step, so that the record ends where the clock is by then. */
  readonly untilMs: () => EpochMs;
  readonly stepMs: number;
  readonly sealEveryMs: number;
  readonly commitEveryMs: number;
  readonly arrivals: (atMs: EpochMs) => Arrivals;
  readonly answering: Answering;
  readonly stopped: () => boolean;
  readonly heard?: (effect: Effect) => void;
  readonly warn: (facts: object, message: string) => void;
}

export interface History {
  readonly fromMs: EpochMs;
  readonly toMs: EpochMs;
  readonly samples: number;
  readonly transitions: number;
}

class RecordClock {
  ms: EpochMs;

  constructor(ms: EpochMs) {
    this.ms = ms;
  }

  readonly wallMs = (): number => this.ms;
  readonly monotonicMs = (): number => this.ms;
}

type CommandSaid = Parameters<Core['live']['command']>[0];

/** What somebody will do, when its time comes. */
class Answers {
  private readonly who: Answering;
  private readonly due: { readonly atMs: EpochMs; readonly say: CommandSaid }[] = [];

  constructor(who: Answering) {
    this.who = who;
  }

  hear(effect: Effect): void {
    const { by, acknowledgeMs, resetMs, liftMs } = this.who;
    if (effect.kind === 'hold' && effect.action === 'set') {
      const { hold } = effect;
      this.plan(effect.judged + liftMs, {
        kind: 'command',
        verb: 'lift',
        hold,
        disposition: 'released',
        by,
        reason: 'tested and found sound',
      });
    }
    if (effect.kind !== 'transition' || effect.occurrence === null) return;
    const { occurrence, judged, transition, to } = effect;
    if (transition === 'raised' || transition === 'realarmed')
      this.plan(judged + acknowledgeMs, { kind: 'command', verb: 'acknowledge', occurrence, by });
    if (to === 'returned-unacknowledged' && judged >= this.who.untilMs)
      this.plan(
        judged + acknowledgeMs,
        { kind: 'command', verb: 'acknowledge', occurrence, by },
        this.who.awayMs,
      );
    if (to === 'latched-acknowledged')
      this.plan(judged + resetMs, { kind: 'command', verb: 'reset', occurrence, by });
  }

  private plan(atMs: EpochMs, say: CommandSaid, untilMs = this.who.untilMs): void {
    if (atMs < untilMs) this.due.push({ atMs, say });
  }

  ready(nowMs: EpochMs): CommandSaid[] {
    const ready = this.due.filter(({ atMs }) => atMs <= nowMs).map(({ say }) => say);
    if (ready.length > 0) {
      const left = this.due.filter(({ atMs }) => atMs > nowMs);
      this.due.splice(0, this.due.length, ...left);
    }
    return ready;
  }
}

/** Steps between two looks at the rest of the process. */
const stepsATurn = 360;
/** Nobody waits for this folder: dead rows go many at once. */
const deadRows = 20_000;

/** Makes the record in an empty folder. Throws AgentError where the disk refuses. */
export async function makeHistory(options: HistoryOptions): Promise<History> {
  const { folder, source, version, fromMs, stepMs, answering } = options;
  const clock = new RecordClock(fromMs);
  const store = openStore(folder, { now: () => clock.ms, ballastBytes: 0 });
  const answers = new Answers(answering);
  let transitions = 0;
  const core = new Core({
    store,
    source,
    mode: 'wall',
    clock,
    version,
    sealEveryMs: options.sealEveryMs,
    lazyCommitMs: options.commitEveryMs,
    tell: ({ effects }) => {
      for (const effect of effects) {
        if (effect.kind === 'transition') transitions += 1;
        answers.hear(effect);
        options.heard?.(effect);
      }
    },
    warn: options.warn,
  });
  try {
    let steps = 0;
    while (clock.ms + stepMs <= options.untilMs() && !options.stopped()) {
      clock.ms += stepMs;
      step(core, options.arrivals(clock.ms), answers.ready(clock.ms));
      steps += 1;
      if (steps % stepsATurn === 0) await breathe(core);
    }
    core.live.stop();
    await core.sealing.ended();
    store.deleteDead(deadRows);
    store.note();
    store.stopRun(core.live.engineNow ?? clock.ms);
  } finally {
    store.close();
  }
  return { fromMs, toMs: clock.ms, samples: core.samples.cursor, transitions };
}

const nothingToDo = (): void => {};

function step(core: Core, { messages }: Arrivals, commands: readonly CommandSaid[]): void {
  core.live.tick();
  for (const command of commands) void core.live.command(command);
  for (const { topic, payload } of messages)
    core.live.take(topic, Buffer.from(payload), false, 0, nothingToDo);
}

/** Sealing runs on its thread meanwhile; the rows it made needless go. */
async function breathe(core: Core): Promise<void> {
  void core.sealIfDue();
  core.store.deleteDead(deadRows);
  await new Promise((resolve) => setImmediate(resolve));
}
