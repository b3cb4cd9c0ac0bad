/**
 * What became of each alarm, gathered from the engine's effects: when it was told, when it went, when
 * somebody had it. What was told to nobody (shelved, suppressed, out of service) is not here.
 */
import type { Effect } from '../input.ts';
import type { Evidence } from '../kinds/kind.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Annunciation } from './alarm-load.ts';
import { isAnnunciated } from './lifecycle.ts';
import type { Priority } from './priority.ts';

export interface AlarmStory {
  readonly occurrence: string;
  readonly rule: string;
  readonly signal: string;
  readonly priority: Priority;
  readonly raisedMs: EpochMs;
  readonly returnedMs: EpochMs | null;
  readonly acknowledgedMs: EpochMs | null;
  /** When the same occurrence was told again. */
  readonly againMs: readonly EpochMs[];
  /** As the rule saw it when it raised. */
  readonly evidence: Evidence;
}

type Transition = Extract<Effect, { kind: 'transition' }>;

/** Takes effects in their order. */
export class AlarmStories {
  private readonly stories = new Map<string, AlarmStory>();

  take(effect: Effect): void {
    if (effect.kind !== 'transition' || effect.occurrence === null) return;
    const known = this.stories.get(effect.occurrence);
    const story = known === undefined ? begun(effect, effect.occurrence) : gone(known, effect);
    if (story !== null) this.stories.set(effect.occurrence, story);
  }

  /** In the order in which they were first told. */
  list(): AlarmStory[] {
    return [...this.stories.values()];
  }
}

function begun(effect: Transition, occurrence: string): AlarmStory | null {
  if (!isAnnunciated(effect.to) || effect.transition === 'returned') return null;
  const { rule, signal, priority, judged, evidence } = effect;
  return {
    occurrence,
    rule,
    signal,
    priority,
    raisedMs: judged,
    returnedMs: null,
    acknowledgedMs: null,
    againMs: [],
    evidence,
  };
}

function gone(story: AlarmStory, effect: Transition): AlarmStory {
  const { transition, judged, closes } = effect;
  switch (transition) {
    case 'returned':
      return { ...story, returnedMs: judged };
    case 'acknowledged':
      return { ...story, acknowledgedMs: story.acknowledgedMs ?? judged };
    case 'raised':
    case 'realarmed':
      return isAnnunciated(effect.to)
        ? { ...story, returnedMs: null, againMs: [...story.againMs, judged] }
        : { ...story, returnedMs: null };
    default:
      return closes === true && story.returnedMs === null
        ? { ...story, returnedMs: judged }
        : story;
  }
}

/** Every time somebody was told. */
export const annunciations = (stories: readonly AlarmStory[]): Annunciation[] =>
  stories.flatMap(({ rule, priority, raisedMs, returnedMs, acknowledgedMs, againMs }) =>
    [raisedMs, ...againMs].map((atMs, i) => ({
      rule,
      priority,
      atMs,
      fresh: i === 0,
      returnedMs,
      acknowledgedMs,
    })),
  );
