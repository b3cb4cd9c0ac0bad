/**
 * People and the certificate put together for one agent: opened before the page, told where the page
 * is once it is there.
 *
 * Always true: a page that other machines reach has TLS; a change of people made on the box is in the
 * ledger within a second; a certificate that ends is made anew, or read anew, while the agent runs.
 */
import { counted } from '#rules/quantity/counted.ts';
import { parseDuration } from '#rules/quantity/duration.ts';
import type { PeopleWritten } from '#rules/site/people-schema.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import {
  Authority,
  type Certified,
  certifiedFrom,
  fingerprint,
  namesIn,
} from '../people/authority.ts';
import { People } from '../people/people.ts';
import type { SessionTimes } from '../people/sessions.ts';
import { loopbackOf, namesOf } from '../web/address.ts';
import { type PageForOthers, pageForOthers } from '../web/for-others.ts';
import type { Web } from '../web/server.ts';
import type { Core } from './core.ts';
import { PeopleDesk } from './people-desk.ts';

export interface HouseOptions {
  /** People are asked for even while there are none. */
  readonly asked: boolean;
  /** The link for the first administrator is good from other machines too. */
  readonly setupFromAnywhere: boolean;
  /** Names under which others reach this machine, the one for links first. */
  readonly names: readonly string[];
  /** PEM files; null: the agent's own authority where one is needed. */
  readonly certificate: { readonly cert: string; readonly key: string } | null;
}

export interface HouseParts {
  readonly core: Core;
  readonly folder: string;
  readonly host: string;
  readonly options: HouseOptions;
  readonly fault: (error: unknown, where: string) => void;
}

/** Nobody is asked for but who is there already. */
export const nobodyAsked: HouseOptions = {
  asked: false,
  setupFromAnywhere: false,
  names: [],
  certificate: null,
};

/** Throws PEOPLE_TIMES_UNUSABLE where a session would end before it can be left idle. */
export function timesOf(written: PeopleWritten | undefined): SessionTimes {
  const { session_idle, session_end } = written === 'required' ? {} : (written ?? {});
  const idleMs = ms(session_idle) ?? limits.sessionIdleMsDefault;
  const absoluteMs = ms(session_end) ?? limits.sessionAbsoluteMsDefault;
  if (idleMs < limits.provedMs || absoluteMs < idleMs)
    throw new AgentError('PEOPLE_TIMES_UNUSABLE', { minutes: limits.provedMs / 60_000 });
  return { idleMs, absoluteMs };
}

/** The schema has looked at it. */
function ms(text: string | undefined): number | null {
  const read = text === undefined ? null : parseDuration(text);
  return read?.ok === true ? read.value : null;
}

export class House {
  readonly people: People;
  readonly desk: PeopleDesk;
  private readonly parts: HouseParts;
  private readonly authority: Authority;
  private certified: Certified | null = null;
  private timers: NodeJS.Timeout[] = [];

  /** Throws as its files do. */
  static async open(parts: HouseParts): Promise<House> {
    const house = new House(parts);
    house.certified = await house.certify();
    return house;
  }

  private constructor(parts: HouseParts) {
    const { folder, options, core } = parts;
    const siteName = (): string => core.plans.name;
    this.parts = parts;
    this.authority = new Authority(folder);
    this.people = new People({
      folder,
      times: timesOf(core.plans.source.site.people),
      asked: options.asked || core.plans.source.site.people !== undefined,
      nowMs: () => Date.now(),
      siteName,
      record: (entry) => core.record({ type: 'people', ...entry }),
    });
    const root = (): string | null => this.certified?.root ?? null;
    const sitePage = (): string | null => core.plans.source.site.telling?.page ?? null;
    this.desk = new PeopleDesk({ people: this.people, siteName, sitePage, root });
  }

  /** null for a page that only this machine reaches, where no certificate is named. */
  get tls(): Certified | null {
    return this.certified;
  }

  /** Those that were given, those of a certificate of somebody else's, the one of the site file. */
  get names(): readonly string[] {
    const { options } = this.parts;
    const page = this.desk.sitePage();
    const ofPage = page === null ? [] : [new URL(page).hostname.replace(/^\[|\]$/g, '')];
    const ofCertificate =
      options.certificate === null || this.certified === null ? [] : namesIn(this.certified.cert);
    return [...new Set([...options.names, ...ofCertificate, ...ofPage])];
  }

  /** Of the root that devices are asked to trust: whoever is at the box reads it there. */
  get fingerprint(): string | null {
    const root = this.certified?.root ?? null;
    return root === null ? null : fingerprint(root);
  }

  /** The page is there: gives the link for the first administrator where one is needed. */
  opened(web: Web): string | null {
    const { people } = this;
    const { page } = this.forOthers(web);
    if (people.admission.required) people.book.served(page);
    people.tend();
    this.every(limits.peopleLookMs, 'people', () => people.tend());
    this.every(limits.certificateLookMs, 'certificate', () => void this.renew(web));
    if (!people.admission.required || people.hasAdministrator()) return null;
    const { setupFromAnywhere } = this.parts.options;
    const secret = people.setup.make(setupFromAnywhere, people.nowMs);
    return `${setupFromAnywhere ? page : web.url}/#/invitation/${secret}`;
  }

  private forOthers({ port }: Web): PageForOthers {
    const { host } = this.parts;
    const scheme = this.certified === null ? 'http' : 'https';
    const address = loopbackOf(host) ?? host.replace(/^\[(.*)\]$/, '$1');
    return pageForOthers({
      scheme,
      address,
      port,
      names: this.names,
      sitePage: this.desk.sitePage(),
    });
  }

  close(): void {
    for (const timer of this.timers) clearInterval(timer);
    this.people.sessions.keep(this.people.nowMs);
  }

  private async certify(): Promise<Certified | null> {
    const { host, options, core } = this.parts;
    const { certificate } = options;
    if (certificate !== null) return certifiedFrom(certificate, Date.now());
    if (loopbackOf(host) !== null || !this.people.admission.required) return null;
    return this.authority.certified(core.plans.name, namesOf(host, this.names), Date.now());
  }

  private async renew(web: Web): Promise<void> {
    try {
      const next = await this.certify();
      if (next === null || next.cert === this.certified?.cert) return;
      this.certified = next;
      web.certify(next);
    } catch (error) {
      this.parts.fault(error, 'certificate');
    }
  }

  private every(ms: number, where: string, act: () => void): void {
    const attempt = (): void => {
      try {
        act();
      } catch (error) {
        this.parts.fault(error, where);
      }
    };
    this.timers.push(setInterval(attempt, ms));
  }
}

/** Throws WEB_NAMES_UNUSABLE for a name that is none. */
export function checkedNames(names: readonly string[]): string[] {
  const wrong = names.find(
    (name) =>
      !/^(?=.{1,253}$)[a-z0-9]([a-z0-9.-]*[a-z0-9])?$/i.test(name) && !/^[0-9a-f:]+$/i.test(name),
  );
  if (wrong !== undefined || names.length > limits.hostNamesMax)
    throw new AgentError('WEB_NAMES_UNUSABLE', { name: wrong ?? counted(names.length, 'name') });
  return names.map((name) => name.toLowerCase());
}
