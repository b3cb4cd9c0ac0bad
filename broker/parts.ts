/** What one open door is made of, wired once. */
import type { Client } from 'aedes';
import type { Connection } from './connection.ts';
import { type DoorCounters, makeCounters } from './counters.ts';
import type { DeviceSource } from './devices.ts';
import type { DoorLimits } from './limits.ts';
import { type GateParts, PublishGate, type Take } from './publish-gate.ts';
import { RetainedBound } from './retained.ts';
import { Sessions } from './sessions.ts';
import { type DoorLog, makeTeller, type Teller } from './teller.ts';

export interface DoorOptions {
  readonly host: string;
  /** 0 for any free port. */
  readonly port: number;
  readonly devices: DeviceSource;
  /** How often the list of devices is looked at again, in milliseconds. */
  readonly devicesReloadMs: number;
  readonly limits: DoorLimits;
  readonly take: Take;
  readonly turnedAway: GateParts['turnedAway'];
  readonly log: DoorLog;
}

/** Whether only this machine can reach an address. */
export const isLoopback = (host: string): boolean =>
  host === 'localhost' || host === '::1' || /^127\.\d+\.\d+\.\d+$/.test(host);

export interface DoorParts {
  readonly options: DoorOptions;
  readonly loopback: boolean;
  readonly counters: DoorCounters;
  readonly connections: Set<Connection>;
  /** Also of connections that have ended, for their wills come after. */
  readonly connectionOf: WeakMap<Client, Connection>;
  readonly sessions: Sessions;
  readonly retained: RetainedBound;
  readonly gate: PublishGate;
  readonly teller: Teller;
  closing: boolean;
}

export function makeParts(options: DoorOptions): DoorParts {
  const { limits, take, turnedAway } = options;
  const counters = makeCounters();
  const sessions = new Sessions(limits, counters);
  const retained = new RetainedBound(limits, counters);
  const teller = makeTeller(options.log);
  const gate = new PublishGate({
    limits,
    counters,
    sessions,
    retained,
    take,
    turnedAway,
    denied: ({ row, client }, why, topic) =>
      teller.tell(`publish denied: ${why}`, row?.user ?? null, { topic, client: client.id }),
    takeFailed: ({ row }, error) => teller.tell('intake failed', row?.user ?? null, { error }),
  });
  return {
    options,
    loopback: isLoopback(options.host),
    counters,
    connections: new Set(),
    connectionOf: new WeakMap(),
    sessions,
    retained,
    gate,
    teller,
    closing: false,
  };
}
