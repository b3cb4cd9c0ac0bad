/**
 * Telling put together for one agent: the ways people are told, the rota, and who they are.
 */
import { dirname } from 'node:path';
import type { TellingWritten } from '#rules/site/telling-schema.ts';
import { AgentError, isDiskRefusal } from '../errors.ts';
import { limits } from '../limits.ts';
import type { Channel, TellablePerson } from '../notify/contract.ts';
import { RotaBook } from '../notify/rota-book.ts';
import { localPerson } from '../people/contract.ts';
import { openRoster, personOf } from '../people/roster.ts';
import { onDisk } from '../store/disk-error.ts';
import { ChannelDesk } from './channel-desk.ts';
import type { Core } from './core.ts';
import { PushDesk } from './push-desk.ts';
import type { TellingOptions } from './telling.ts';
import { testSaid } from './telling-message.ts';

export interface TellingHouseParts {
  readonly folder: string;
  /** null where the agent runs on none. */
  readonly siteFile: string | null;
  /** Beside the people of the folder. */
  readonly others: readonly TellablePerson[];
  /** The page's own address; null while it is not there yet. */
  readonly page: () => string | null;
  readonly warn: (error: AgentError) => void;
  readonly fault: (error: unknown) => void;
  /** Instead of the real ones. */
  readonly channels?: readonly Channel[];
}

const whoeverIsHere: TellablePerson = {
  id: localPerson,
  name: localPerson,
  role: 'administrator',
  language: 'en',
  addresses: { email: null, push: true },
};

/** How long people are remembered, so that a flood does not read them for each alarm. */
const peopleKeptMs = 1_000;

export class TellingHouse {
  readonly desk: ChannelDesk;
  readonly push: PushDesk;
  readonly rota: RotaBook;
  private readonly parts: TellingHouseParts;
  private readonly roster: ReturnType<typeof openRoster>;
  private timer: NodeJS.Timeout | null = null;
  private readAtMs = Number.NEGATIVE_INFINITY;
  private reading = false;
  private people: readonly TellablePerson[] = [];
  private peopleAtMs = Number.NEGATIVE_INFINITY;

  /** `core`: already with its plans. Throws CHANNEL_SECRET_UNUSABLE. */
  constructor(core: Core, parts: TellingHouseParts) {
    const { folder, siteFile, warn } = parts;
    const page = (): string => parts.page() ?? '';
    this.parts = parts;
    // People are there before the page is: what a kill left untold is told first of all.
    this.roster = openRoster(folder);
    const written = (): TellingWritten | undefined => core.plans.source.site.telling;
    const timezone = (): string => core.plans.timezone;
    const nowMs = (): number => Date.now();
    this.desk = new ChannelDesk({ folder, written, timezone, page, env: process.env, nowMs, warn });
    this.push = new PushDesk({
      ways: this.desk,
      languageOf: (id) => this.tellable().find((one) => one.id === id)?.language ?? 'en',
      say: (at, language) => testSaid(core, at, language),
      nowMs,
    });
    this.rota = new RotaBook({
      written: () => written()?.rota ?? [],
      timezone,
      place: () => ({
        folder: siteFile === null ? null : dirname(siteFile),
        hosts: written()?.calendar_hosts ?? [],
      }),
      nowMs,
    });
  }

  get options(): TellingOptions {
    const { desk, rota, parts } = this;
    const { channels = desk.channels, fault } = parts;
    return {
      persons: { list: () => this.tellable() },
      channels,
      webhooks: () => desk.webhooks(),
      rota: () => rota.now(),
      gone: () => undefined,
      ready: () => parts.page() !== null,
      fault,
    };
  }

  /** Reads calendars now, and again every while. */
  start(): void {
    this.look();
    this.timer = setInterval(() => this.look(), 1_000);
  }

  /** The agent runs: what it needs for itself from now on is made. */
  started(): void {
    try {
      onDisk(this.parts.folder, () => this.desk.keys);
    } catch (error) {
      // A disk that refuses is told as health; the key is made when a phone first asks for it.
      if (!isDiskRefusal(error)) throw error;
    }
  }

  stop(): void {
    if (this.timer !== null) clearInterval(this.timer);
    this.push.stop();
  }

  private look(): void {
    const now = performance.now();
    const due = now - this.readAtMs >= limits.rotaReadEveryMs || this.rota.hasUnread;
    if (!due || this.reading) return;
    this.reading = true;
    this.readAtMs = now;
    this.rota
      .read()
      .catch(this.parts.fault)
      .finally(() => {
        this.reading = false;
      });
  }

  /** null where the file cannot be read: whoever was known is told. */
  private peopleOf(roster: ReturnType<typeof openRoster>): ReturnType<typeof personOf>[] | null {
    try {
      return roster.read().people.map(personOf);
    } catch (error) {
      if (!(error instanceof AgentError)) throw error;
      this.parts.warn(error);
      return null;
    }
  }

  /** A person whose phone takes no push is told by e-mail. */
  private tellable(): readonly TellablePerson[] {
    const now = performance.now();
    if (now - this.peopleAtMs < peopleKeptMs) return this.people;
    const { desk, roster, parts } = this;
    const all = this.peopleOf(roster);
    if (all === null) return this.people;
    desk.devices.forgetOthers(
      new Set([...all, ...parts.others, whoeverIsHere].map(({ id }) => id)),
    );
    // Without people the phones of whoever is at this machine are called.
    const here = all.length === 0 && desk.devices.of(localPerson).length > 0 ? [whoeverIsHere] : [];
    this.people = [...all, ...here, ...parts.others].map((person) => ({
      ...person,
      addresses: {
        email: desk.hasEmail ? person.addresses.email : null,
        push: person.addresses.push && desk.devices.of(person.id).length > 0,
      },
    }));
    this.peopleAtMs = now;
    return this.people;
  }
}
