/** One alarm as the engine remembers it. Plain data: a snapshot holds it whole. */
import type { Again } from '../alarm/again.ts';
import type { AlarmPosition, AlarmState, AlarmTraits, BasicState } from '../alarm/lifecycle.ts';
import { type Restless, restlessBegin } from '../alarm/nuisance.ts';
import type { PersonId } from '../input.ts';
import type { EpochMs } from '../signal/sample.ts';

/** Why it is put aside: shelved, suppressed by design, out of service. */
export interface Aside {
  readonly since: EpochMs;
  /** null where the plant's state did it. */
  readonly by: PersonId | null;
  readonly reason: string;
  /** A shelf that ends as soon as the alarm returns. */
  readonly oneShot: boolean;
}

export interface Alarm extends AlarmPosition {
  state: AlarmState;
  beneath: BasicState;
  /** The open occurrence. */
  occurrence: string | null;
  /** The one before it, by which a shelf may still be named. */
  lastOccurrence: string | null;
  /** When its shelf ends, or it is back in service by itself. */
  shelvedUntil: EpochMs | null;
  aside: Aside | null;
  /** It latches if it did when it was raised; null where it never was. */
  latching: boolean | null;
  /** The site file changed its rule since it was raised. */
  changed: boolean;
  /** When its suppression by design ends, if nothing else ends or renews it. */
  releaseAt: EpochMs | null;
  /** When it is told again, if nothing improves. */
  again: Again | null;
  restless: Restless;
}

export const alarmBegin = (): Alarm => ({
  state: 'normal',
  beneath: 'normal',
  occurrence: null,
  lastOccurrence: null,
  shelvedUntil: null,
  aside: null,
  latching: null,
  changed: false,
  releaseAt: null,
  again: null,
  restless: restlessBegin,
});

/** What its rule's class asks of it, and what it asked when the alarm was raised: the stricter. */
export const traitsOf = ({ latching }: Alarm, of: AlarmTraits): AlarmTraits =>
  latching === true && !of.latching ? { ...of, latching: true } : of;

/** When its occurrence was raised; null without one. */
export function raisedAt({ occurrence }: Alarm): EpochMs | null {
  return occurrence === null ? null : Number(occurrence.slice(occurrence.lastIndexOf('@') + 1));
}

/**
 * As it was left behind, by this version or an older one. A shelf whose end is not known has
 * ended: unknown means unshelved (OPC 10000-9, 5.8.17.1).
 */
export function alarmResumed(saved: Partial<Alarm> | undefined, now: EpochMs): Alarm {
  const alarm = { ...alarmBegin(), ...saved };
  if (alarm.state === 'shelved' && !Number.isFinite(alarm.shelvedUntil ?? Number.NaN))
    alarm.shelvedUntil = now;
  return alarm;
}

/** The same, its times moved: the clock was set anew. */
export function alarmShifted(alarm: Alarm, deltaMs: number): Alarm {
  const move = (at: EpochMs | null): EpochMs | null => (at === null ? null : at + deltaMs);
  const { aside, again, restless } = { ...alarmBegin(), ...alarm };
  return {
    ...alarm,
    shelvedUntil: move(alarm.shelvedUntil),
    releaseAt: move(alarm.releaseAt ?? null),
    aside: aside === null ? null : { ...aside, since: aside.since + deltaMs },
    again: again === null ? null : { ...again, dueMs: again.dueMs + deltaMs },
    restless: {
      raises: restless.raises.map((at) => at + deltaMs),
      fleeting: restless.fleeting.map((at) => at + deltaMs),
    },
  };
}
