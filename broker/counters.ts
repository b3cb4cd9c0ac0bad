/** What the door counts. A plain object that only grows, save the three marked "now". */
import type { Denial } from './access.ts';

/** Why a CONNECT is refused. */
export const refusals = [
  'full',
  'not-mqtt-3-1-1',
  'protocol',
  'client-id',
  'client-id-taken',
  'secret',
  'busy',
  'no-devices',
  'will',
] as const;
export type RefusalCause = (typeof refusals)[number];

/** Why the door ends a connection that it had let in, or that never spoke properly. */
export const closings = [
  'malformed',
  'packet-too-large',
  'connect-timeout',
  'silent',
  'slow-reader',
  'device-changed',
  'early-packets',
  'network',
  'intake-failed',
] as const;
export type ClosingCause = (typeof closings)[number];

export type DenialCause = Denial | 'payload-too-large' | 'message-id' | 'too-many-filters';
export const denials = [
  ...(['empty', 'too-long', 'nul', 'not-utf-8', 'wildcard'] as const),
  ...([
    'plus-not-alone',
    'hash-not-alone',
    'hash-not-last',
    'own',
    'server',
    'not-listed',
  ] as const),
  ...(['payload-too-large', 'message-id', 'too-many-filters'] as const),
] as const satisfies readonly DenialCause[];

export interface DoorCounters {
  connections: number;
  /** Now: connections open, accepted or not. */
  connectionsOpen: number;
  readonly refused: Record<RefusalCause, number>;
  readonly closed: Record<ClosingCause, number>;
  readonly denied: Record<DenialCause, number>;
  /** Messages handed to the intake, by QoS 0, 1 and 2. */
  readonly messages: [number, number, number];
  payloadBytes: number;
  /** Now: handed to the intake and not yet done. */
  inflight: number;
  /** QoS 2 messages sent again, not handed on twice. */
  duplicates: number;
  /** Messages that waited for the next second. */
  slowed: number;
  /** Messages not sent to a client that does not read, or not kept for one that is away. */
  dropped: number;
  /** Now: topics with a retained message. */
  retained: number;
  retainedRefused: number;
  /** The agent's own messages. */
  published: number;
}

const zeroes = <Key extends string>(keys: readonly Key[]): Record<Key, number> =>
  Object.fromEntries(keys.map((key) => [key, 0])) as Record<Key, number>;

export const makeCounters = (): DoorCounters => ({
  connections: 0,
  connectionsOpen: 0,
  refused: zeroes(refusals),
  closed: zeroes(closings),
  denied: zeroes(denials),
  messages: [0, 0, 0],
  payloadBytes: 0,
  inflight: 0,
  duplicates: 0,
  slowed: 0,
  dropped: 0,
  retained: 0,
  retainedRefused: 0,
  published: 0,
});
