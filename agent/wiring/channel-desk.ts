/**
 * The ways people are told, as the site file has them now: servers, webhooks, phones, their secrets.
 *
 * Always true: a change of the site file holds for the next message, one of a secret within a minute; a
 * secret that is missing or unusable stops no other way, is said once in the log and in the cause of
 * each message that waits for it.
 */
import type { TellingWritten } from '#rules/site/telling-schema.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { EmailChannel, type MailServer } from '../notify/channels/email.ts';
import { PushChannel } from '../notify/channels/push.ts';
import { PushDevices } from '../notify/channels/push-devices.ts';
import { keptPushKeys, type PushKeys, pushKeys } from '../notify/channels/push-keys.ts';
import {
  type Environment,
  readSecret,
  secretFile,
  variableOf,
  writePrivate,
} from '../notify/channels/secret.ts';
import { makeSecret, secretBytes } from '../notify/channels/signature.ts';
import { type Webhook, WebhookChannel } from '../notify/channels/webhook.ts';
import type { Channel } from '../notify/contract.ts';

export interface ChannelDeskParts {
  readonly folder: string;
  /** What the site file says of telling now. */
  readonly written: () => TellingWritten | undefined;
  readonly timezone: () => string;
  /** The page's own address, where the site file names no other. */
  readonly page: () => string;
  readonly env: Environment;
  readonly nowMs: () => number;
  readonly warn: (error: AgentError) => void;
  /** PEM of all authorities that are trusted; absent: those Node knows. */
  readonly authorities?: readonly string[];
}

interface Ways {
  readonly server: MailServer | null;
  readonly webhooks: ReadonlyMap<string, Webhook>;
  readonly plantHosts: ReadonlySet<string>;
  readonly contact: string;
}

const portOf = { starttls: 587, tls: 465, none: 25 } as const;

export class ChannelDesk {
  readonly devices: PushDevices;
  readonly channels: readonly Channel[];
  readonly push: PushChannel;
  private readonly parts: ChannelDeskParts;
  private of: TellingWritten | undefined | null = null;
  private made: PushKeys | null;
  private known: Ways | null = null;
  private readAtMs = 0;
  /** What the log has of the settings as they are. */
  private readonly said = new Set<string>();

  /** Throws CHANNEL_SECRET_UNUSABLE where the agent's own key or list of phones cannot be read. */
  constructor(parts: ChannelDeskParts) {
    const { folder, nowMs, timezone, authorities } = parts;
    this.parts = parts;
    this.made = keptPushKeys(folder);
    this.devices = new PushDevices(folder);
    const ways = (): Ways => this.ways();
    const page = (): string => parts.written()?.page ?? parts.page();
    const beside = authorities === undefined ? {} : { authorities };
    this.push = new PushChannel({
      keys: () => this.keys,
      devices: this.devices,
      contact: () => ways().contact,
      plantHosts: () => ways().plantHosts,
      nowMs,
      ...beside,
    });
    this.channels = [
      this.push,
      new EmailChannel({ server: () => ways().server, page, timezone, ...beside }),
      new WebhookChannel({ webhooks: () => ways().webhooks, page, nowMs, ...beside }),
    ];
  }

  /** Made when first asked for, so that a start that failed leaves nothing behind. */
  get keys(): PushKeys {
    this.made ??= pushKeys(this.parts.folder);
    return this.made;
  }

  /** Names of the site's webhooks now. */
  webhooks(): readonly string[] {
    return [...this.ways().webhooks.keys()];
  }

  get hasEmail(): boolean {
    return this.ways().server !== null;
  }

  private ways(): Ways {
    const written = this.parts.written();
    const now = this.parts.nowMs();
    if (this.of !== written) this.said.clear();
    const isOld = Math.abs(now - this.readAtMs) >= limits.secretLookMs;
    if (this.known === null || this.of !== written || isOld) {
      this.known = this.read(written);
      this.of = written;
      this.readAtMs = now;
    }
    return this.known;
  }

  private read(written: TellingWritten | undefined): Ways {
    const { email, webhooks = {}, push } = written ?? {};
    const from = email?.from;
    const address = from === undefined ? null : (/<(.+)>$/.exec(from)?.[1] ?? from);
    return {
      server: email === undefined ? null : this.serverOf(email),
      webhooks: new Map(
        Object.entries(webhooks).map(([name, { url, any_address: anyAddress = false }]) => [
          name,
          { url, anyAddress, secrets: this.secretsOf(name) },
        ]),
      ),
      plantHosts: new Set(push?.hosts ?? []),
      contact: push?.contact ?? `mailto:${address ?? 'nobody@forebond.invalid'}`,
    };
  }

  private serverOf(email: NonNullable<TellingWritten['email']>): MailServer {
    const { server: host, security = 'starttls', port = portOf[security], user, from } = email;
    const secret = user === undefined ? null : this.secretOf('email', `the mail user "${user}"`);
    return { host, port, security, user: user ?? null, secret, from };
  }

  private secretOf(name: string, what: string): string | null {
    const { folder, env } = this.parts;
    const secret = this.tried(() => readSecret(folder, name, env));
    if (secret === null)
      this.warn(
        new AgentError('CHANNEL_SECRET_MISSING', {
          what,
          path: secretFile(folder, name),
          variable: variableOf(name),
        }),
      );
    return secret ?? null;
  }

  /** One or two, the newer first; without any the agent makes one. Empty where they are unusable. */
  private secretsOf(webhook: string): readonly Buffer[] {
    const { folder, env } = this.parts;
    const name = `webhook-${webhook}`;
    const text = this.tried(() => {
      const given = readSecret(folder, name, env);
      if (given !== null) return given;
      const made = makeSecret();
      writePrivate(secretFile(folder, name), `${made}\n`);
      return made;
    });
    if (text === undefined || text === null) return [];
    const secrets = text.split(/\s+/).map(secretBytes);
    if (secrets.length <= 2 && secrets.every((bytes) => bytes !== null)) return secrets;
    this.warn(new AgentError('CHANNEL_WEBHOOK_SECRET_WRONG', { name: webhook }));
    return [];
  }

  /** undefined, and said in the log, where a file cannot be used. */
  private tried<T>(read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof AgentError)) throw error;
      this.warn(error);
      return undefined;
    }
  }

  private warn(error: AgentError): void {
    if (this.said.has(error.message)) return;
    this.said.add(error.message);
    this.parts.warn(error);
  }
}
