/** What an agent is started with, and what a started one gives. */
import type { Logger } from 'pino';
import type { PersonId } from '#rules/input.ts';
import type { ClockSource } from '../clock/engine-clock.ts';
import type { Channel, TellablePerson } from '../notify/contract.ts';
import type { SiteChanges } from '../site/changes.ts';
import type { SiteSource } from '../site/revision.ts';
import type { HouseOptions } from './house.ts';
import type { SiteDeskParts } from './site-desk.ts';

export interface Address {
  readonly host: string;
  readonly port: number;
}

export interface AgentOptions {
  readonly source: SiteSource;
  /** The file it was read from, and how to read it again; absent where there is none. */
  readonly siteFile?: Pick<SiteDeskParts, 'file' | 'read' | 'line' | 'refused'>;
  readonly folder: string;
  readonly http: Address;
  readonly mqtt: Address;
  readonly mode: 'wall' | 'samples';
  readonly log: Logger;
  readonly spaceBytes?: number;
  /** Without it people who are in the folder are asked for, and no others. */
  readonly house?: HouseOptions;
  /** By which ways people are told, instead of those of the site file. */
  readonly channels?: readonly Channel[];
  /** Who is told, beside the people of the folder. */
  readonly tellAlso?: readonly TellablePerson[];
  readonly clock?: ClockSource;
  /** Lets devices in: done once the folder is held, before the door reads who they are. */
  readonly admit?: () => Promise<void>;
  /** Default limits.ballastBytes. */
  readonly ballastBytes?: number;
  /** Default limits.sealEveryMs. */
  readonly sealEveryMs?: number;
}

export interface Agent {
  readonly page: string;
  readonly mqtt: string;
  readonly folder: string;
  /** Where the first administrator comes in; null where there is one, or none is asked for. */
  readonly setup: string | null;
  /** SHA-256 of the root certificate that the agent made itself, as hex pairs; null where it has none. */
  readonly fingerprint: string | null;
  /** Why an alarm would reach nobody now, in a sentence; null where it would, or nobody is to be told. */
  readonly tellingNote: string | null;
  /** The site file as it is now; null where the agent runs on none. Rejects where it cannot be taken. */
  reload(by: PersonId): Promise<SiteChanges | null>;
  /** Everything taken is judged, committed and acknowledged; then all is closed. */
  stop(): Promise<void>;
}
