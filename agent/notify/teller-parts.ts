/** What telling leans on, as it sees it; agent/compose.ts hands it in. */
import type { Effect, PersonId } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { AlarmToTell, Chase, Note } from '#rules/telling/chase.ts';
import type { MailingKind, MailingSettings } from '#rules/telling/mailings.ts';
import type { Rota } from '#rules/telling/rota.ts';
import type { LedgerBody, OutboxRow } from '../store/contract.ts';
import type { Channel, ChannelName, Message, MessageKind, Persons, Target } from './contract.ts';

/** What a message says, before it is addressed. */
export type Said = Omit<Message, 'key' | 'language' | 'kind' | 'silent' | 'occurrence' | 'thread'>;

export interface Saying {
  readonly kind: MessageKind;
  /** null for a digest. */
  readonly chase: Chase | null;
  readonly at: EpochMs;
  readonly language: 'en' | 'de';
  /** Who answered, where somebody did. */
  readonly by: PersonId | null;
  readonly notes: readonly Note[];
}

/** That somebody was told, or could not be. */
export interface Told {
  readonly at: EpochMs;
  readonly occurrence: string;
  readonly step: number;
  readonly kind: MessageKind;
  readonly channel: ChannelName;
  /** null where it is the site's webhook: then its name stands in `to`. */
  readonly person: PersonId | null;
  readonly to: string | null;
  readonly outcome: string;
  readonly cause: string | null;
}

/** A mail that falls due by the clock. */
export interface Report {
  readonly kind: MailingKind;
  /** When it was due, and the time before. */
  readonly dueMs: EpochMs;
  readonly beforeMs: EpochMs;
  readonly language: 'en' | 'de';
}

export interface TellerParts {
  readonly channels: ReadonlyMap<ChannelName, Channel>;
  readonly persons: Persons;
  readonly rota: () => Rota;
  /** Names of the site's webhooks: each is told of everything. */
  readonly webhooks: () => readonly string[];
  readonly alarmOf: (effect: Extract<Effect, { kind: 'transition' }>) => AlarmToTell | null;
  /** The last transition of each alarm that stands and nobody has answered. */
  readonly standing: () => readonly Extract<Effect, { kind: 'transition' }>[];
  /** Whether a worse alarm about the same signal and side stands. */
  readonly outranked: (occurrence: string) => boolean;
  readonly say: (saying: Saying) => Said;
  readonly mailings: () => MailingSettings;
  /** null where it cannot be made now: it is asked for again a while later. */
  readonly report: (report: Report) => Said | null;
  readonly write: (row: OutboxRow) => void;
  readonly record: (body: LedgerBody) => void;
  /** For the alarm's own list; `occurrence` is each alarm it was about. */
  readonly told: (occurrence: string, told: Told) => void;
  /** A target is no more. */
  readonly gone: (target: Target, cause: string) => void;
  readonly now: () => EpochMs;
  readonly ready: () => boolean;
  readonly fault: (error: unknown) => void;
}
