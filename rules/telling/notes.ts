/**
 * What the engineers' digest will say: alarms that come and go, and called nobody.
 *
 * Always true: what is highly managed is told each time, and stands here too where it chatters or is
 * fleeting: whoever can mend its rule must know.
 */
import {
  type Nuisance,
  nuisanceOf,
  type Restless,
  raisedAgain,
  restlessBegin,
  wentAway,
} from '../alarm/nuisance.ts';
import type { Effect } from '../input.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Note } from './chase.ts';
import type { TellingSettings } from './settings.ts';
import { nextAtMinute } from './site-clock.ts';

type Transition = Extract<Effect, { kind: 'transition' }>;

export interface NotesState {
  readonly notes: readonly Note[];
  readonly digestDueMs: EpochMs | null;
  /** How highly managed alarms came and went, by rule; absent in what older versions wrote. */
  readonly restless?: Readonly<Record<string, Restless>>;
}

const keyOf = ({ rule, why }: Pick<Note, 'rule' | 'why'>): string => `${rule} ${why}`;

export class DigestNotes {
  private notes: Map<string, Note>;
  private readonly restless: Map<string, Restless>;
  /** When the digest is due; null where there is nothing to say. */
  dueMs: EpochMs | null;

  constructor(state: NotesState | null) {
    this.notes = new Map(state?.notes.map((note) => [keyOf(note), note]));
    this.restless = new Map(Object.entries(state?.restless ?? {}));
    this.dueMs = state?.digestDueMs ?? null;
  }

  save(): NotesState {
    const restless = Object.fromEntries(this.restless);
    return { notes: [...this.notes.values()], digestDueMs: this.dueMs, restless };
  }

  add(
    { rule, judged }: Transition,
    why: Nuisance | 'quiet',
    settings: TellingSettings,
    told = false,
  ): void {
    const key = keyOf({ rule, why });
    const count = (this.notes.get(key)?.count ?? 0) + 1;
    this.notes.set(key, { rule, why, count, lastMs: judged, ...(told ? { told } : {}) });
    const { digestMin, timezone } = settings;
    this.dueMs ??= nextAtMinute(judged, digestMin, timezone);
  }

  /** Something happened to a highly managed alarm; no engine calls one a nuisance. */
  managed(effect: Transition, settings: TellingSettings): void {
    const { rule, judged, transition, from } = effect;
    const before = this.restless.get(rule) ?? restlessBegin;
    if (transition === 'returned')
      this.restless.set(rule, wentAway(before, judged, from !== 'unacknowledged'));
    if (transition !== 'raised') return;
    const now = raisedAgain(before, judged);
    this.restless.set(rule, now);
    const why = nuisanceOf(now);
    if (why !== null) this.add(effect, why, settings, true);
  }

  /** What is due by `now`; null where nothing is. */
  take(now: EpochMs): readonly Note[] | null {
    if (this.dueMs === null || this.dueMs > now) return null;
    const notes = [...this.notes.values()];
    this.notes = new Map();
    this.dueMs = null;
    return notes;
  }
}
