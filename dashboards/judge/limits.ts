/**
 * The limits of a signal, each once: those its rules hold it against, as the agent tells them. The
 * sentence, the card, the ruler and the chart all take theirs from here.
 */
import type { AlarmView, RuleView, SignalView } from '../../agent/web/contract.ts';

export type Side = 'low' | 'high';

export interface SideLimits {
  /** Canonical, the one met first first. */
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** Two doubles of one written number. */
const isSame = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));

const distinct = (limits: readonly number[]): number[] =>
  limits.filter((limit, i) => limits.findIndex((each) => isSame(each, limit)) === i);

export function limitsOf({ judged_at: judgedAt }: Pick<SignalView, 'judged_at'>): SideLimits {
  const on = (side: Side): number[] =>
    distinct(judgedAt.filter((each) => each.side === side).map(({ limit }) => limit));
  return { low: on('low').sort((a, b) => b - a), high: on('high').sort((a, b) => a - b) };
}

export const hasLimits = ({ judged_at: judgedAt }: Pick<SignalView, 'judged_at'>): boolean =>
  judgedAt.length > 0;

export interface OwnLimit {
  readonly limit: number;
  readonly side: Side;
}

/** The limit that an alarm is about, where it is one on the scale of `signal`. */
export function ownLimit(alarm: AlarmView, signal: SignalView): OwnLimit | null {
  const { limit, side, unit } = alarm.evidence;
  if (limit === null || side === null || unit !== signal.unit) return null;
  const known = limitsOf(signal)[side].find((each) => isSame(each, limit));
  return { limit: known ?? limit, side };
}

/** With the alarm's own among them, which a learned or moving limit is not. */
export function limitsWith(limits: SideLimits, own: OwnLimit | null): SideLimits {
  if (own === null || limits[own.side].includes(own.limit)) return limits;
  const ascending = [...limits[own.side], own.limit].sort((a, b) => a - b);
  return { ...limits, [own.side]: own.side === 'high' ? ascending : ascending.reverse() };
}

/** By rule kind: the setting that says how far apart its readings may be. */
const apartSettings: Readonly<Record<string, string>> = {
  'self-heat': 'excess',
  disagree: 'allowed',
  stray: 'limit',
};

/** The limit of a rule that judges a difference of readings, as the site has it, `5 K`; else null. */
export function limitInRule({
  kind,
  settings,
}: RuleView): { readonly setting: string; readonly written: string } | null {
  const setting = apartSettings[kind];
  const written = setting === undefined ? undefined : settings[setting];
  return setting === undefined || typeof written !== 'string' ? null : { setting, written };
}
