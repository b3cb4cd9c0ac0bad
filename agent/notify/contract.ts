/**
 * What telling hands to a channel, and what a channel answers.
 *
 * Always true: a message is complete in itself, so that a phone without network shows all of it;
 * a message is sent at least once, and every sending of it carries the same `key`; a channel never
 * throws for what the far side did, it answers with the outcome and the cause in plain words.
 */
import type { SignalWord } from '#rules/alarm/label.ts';
import type { Priority } from '#rules/alarm/priority.ts';
import type { PersonId } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';

export type ChannelName = 'push' | 'email' | 'webhook';
export const channelNames: readonly ChannelName[] = ['push', 'email', 'webhook'];

export type MessageKind =
  /** An alarm, told to this person for the first time. */
  | 'alarm'
  /** The same alarm once more: nobody answered, or nothing improved. */
  | 'again'
  /** The condition is over: makes no sound, closes the notification. */
  | 'over'
  /** Somebody has it: makes no sound, closes the notification of all others. */
  | 'answered'
  /** Many alarms in one message, which names the worst and the count. */
  | 'flood'
  /** A test that somebody asked for, to himself. */
  | 'test'
  /** For the engineer: alarms that come and go, which no phone was called for. */
  | 'digest'
  /** The week's alarm performance; by e-mail alone. */
  | 'week'
  /** The signed head of the ledger, for somebody to keep elsewhere; by e-mail alone. */
  | 'checkpoint';

/** Said beside the rest, where a message has room for it. */
export interface Detail {
  readonly heading: string;
  readonly lines: readonly string[];
}

export interface Attachment {
  readonly name: string;
  readonly contentType: string;
  readonly text: string;
}

export interface Message {
  /**
   * `<occurrence>/<step>/<channel>/<person>`, at most 400 characters of printable ASCII without
   * spaces; equal in every sending. The receiver may know a repeat by it.
   */
  readonly key: string;
  /** null for a test and a digest; of a flood the group's own id, `flood@<ms>`. */
  readonly occurrence: string | null;
  /** Messages of one thread belong together (one e-mail thread, one notification that is replaced). */
  readonly thread: string;
  readonly kind: MessageKind;
  /** No sound, no vibration, not brought to the front. */
  readonly silent: boolean;
  readonly language: 'en' | 'de';
  /** At most 120 characters: the signal word and the place. */
  readonly title: string;
  /** What is wrong, where, how bad, how long until it matters: one sentence. */
  readonly sentence: string;
  /** What it leads to where nobody acts; empty where there is nothing to say. */
  readonly consequence: string;
  /** The first three things to do. */
  readonly steps: readonly string[];
  /** Whole sentences. */
  readonly doNot: readonly string[];
  readonly caution: string;
  readonly deferral: string;
  readonly word: SignalWord;
  readonly priority: Priority;
  /** Its notification opens the page; it must not be acknowledged without having been seen there. */
  readonly highlyManaged: boolean;
  /** The path of its page, from the root: `/#/alarm/…`. The channel puts the agent's address before it. */
  readonly url: string;
  /** When what it says happened. */
  readonly at: EpochMs;
  /** Until when it is of use; a channel that stores it for a while drops it then. */
  readonly usefulUntil: EpochMs;
  readonly site: string;
  /** `line/station`; empty where it speaks of several. */
  readonly station: string;
  /** "high limit 45 °C"; empty where the rule has no such limit. */
  readonly limitText: string;
  /** Alarms it speaks of: 1, or the count of a flood or digest. */
  readonly count: number;
  /** E-mail alone has room for these. */
  readonly details?: readonly Detail[];
  readonly attachment?: Attachment;
}

export interface Target {
  /** null for a webhook, which is the site's. */
  readonly person: PersonId | null;
  readonly channel: ChannelName;
  /**
   * Of `email` the address; of `webhook` its name in the site file; of `push` the person's id: the
   * channel knows the devices, and answers `delivered` once one of them took it.
   */
  readonly address: string;
}

export type Delivery =
  | { readonly outcome: 'delivered' }
  /** Try again: not before `afterMs` where the far side said so (Retry-After). */
  | { readonly outcome: 'later'; readonly afterMs: number | null; readonly cause: string }
  /** The target is no more (404, 410, no such mailbox): it is not asked again. */
  | { readonly outcome: 'gone'; readonly cause: string }
  /** This message will never be taken there (400, 413); others may be. */
  | { readonly outcome: 'refused'; readonly cause: string };

export interface Channel {
  readonly name: ChannelName;
  /**
   * One try, within the channel's own time limit; aborted by `signal` when the agent stops.
   * Rejects for a fault of the agent's own alone, which counts as `later`.
   * `cause` is a plain sentence for people; it holds no secret and no address of anybody.
   */
  send(message: Message, target: Target, signal: AbortSignal): Promise<Delivery>;
}

export type Role = 'reader' | 'operator' | 'maintenance' | 'ehs' | 'engineer' | 'administrator';

/** A person as telling needs to know them. */
export interface TellablePerson {
  readonly id: PersonId;
  readonly name: string;
  readonly role: Role;
  readonly language: 'en' | 'de';
  readonly addresses: { readonly email: string | null; readonly push: boolean };
  /** Priorities they want to hear of where no rota says who is on call; all where absent. */
  readonly wants?: readonly Priority[];
}

/** Whoever may be told now; asked anew for each step. */
export interface Persons {
  list(): readonly TellablePerson[];
}
