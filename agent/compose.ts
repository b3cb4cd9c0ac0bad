/**
 * The agent put together: the only file that knows every part. Start and stop order are lists.
 */
import { join } from 'node:path';
import type { Logger } from 'pino';
import { openDevices } from '#broker/devices.ts';
import { type Door, openDoor } from '#broker/door.ts';
import type { DoorLimits } from '#broker/limits.ts';
import { type ClockSource, systemClock } from './clock/engine-clock.ts';
import { limits } from './limits.ts';
import type { SiteSource } from './site/revision.ts';
import { SeriesReader } from './store/series-reader.ts';
import { openStore } from './store/store.ts';
import { version } from './version.ts';
import { startWeb, type Web } from './web/server.ts';
import { Core } from './wiring/core.ts';
import { DamageBook } from './wiring/damage-book.ts';
import { figures } from './wiring/figures.ts';
import { findingWords, isAlarming } from './wiring/finding-words.ts';
import { healthParts } from './wiring/health.ts';
import { Upkeep } from './wiring/upkeep.ts';
import { CorePorts } from './wiring/web-ports.ts';

export interface Address {
  readonly host: string;
  readonly port: number;
}

export interface AgentOptions {
  readonly source: SiteSource;
  readonly folder: string;
  readonly http: Address;
  readonly mqtt: Address;
  readonly mode: 'wall' | 'samples';
  readonly log: Logger;
  readonly spaceBytes?: number;
  readonly clock?: ClockSource;
  /** Default limits.ballastBytes. */
  readonly ballastBytes?: number;
  /** Default limits.sealEveryMs. */
  readonly sealEveryMs?: number;
}

export interface Agent {
  readonly page: string;
  readonly mqtt: string;
  readonly folder: string;
  /** Everything taken is judged, committed and acknowledged; then all is closed. */
  stop(): Promise<void>;
}

const doorLimits: DoorLimits = {
  payloadBytesMax: limits.payloadBytesMax,
  topicBytesMax: limits.topicBytesMax,
  clientsMax: limits.mqttClientsMax,
  clientIdBytesMax: limits.mqttClientIdBytesMax,
  connectTimeoutMs: limits.mqttConnectTimeoutMs,
  keepAliveMaxS: limits.mqttKeepAliveMaxS,
  earlyPacketsMax: limits.mqttEarlyPacketsMax,
  subscriptionsMax: limits.mqttSubscriptionsMax,
  messagesPerSecondMax: limits.mqttMessagesPerSecondMax,
  unreadBytesMax: limits.mqttUnreadBytesMax,
  retainedMax: limits.mqttRetainedMax,
  retainedBytesMax: limits.mqttRetainedBytesMax,
  sessionsMax: limits.mqttSessionsMax,
  sessionMessagesMax: limits.mqttSessionMessagesMax,
  exactlyOnceMax: limits.mqttUnreleasedMax,
  withheldMax: limits.mqttWithheldMax,
};

const urlHost = (host: string): string => (host.includes(':') ? `[${host}]` : host);

/** Throws AgentError or DoorError where it cannot start; what was opened is closed again. */
export async function startAgent(options: AgentOptions): Promise<Agent> {
  const { log } = options;
  const closers: (() => void | Promise<void>)[] = [];
  const stop = (): Promise<void> => closeAll(closers.splice(0).reverse());
  try {
    return await start(options, closers, stop, log);
  } catch (error) {
    // Why it could not start is what people must hear.
    await stop().catch((another) => log.warn({ err: another }, 'closing failed as well'));
    throw error;
  }
}

/** Closes all of them, whatever one of them says; then throws what the first that failed said. */
async function closeAll(closers: readonly (() => void | Promise<void>)[]): Promise<void> {
  const failures: unknown[] = [];
  for (const close of closers) {
    try {
      await close();
    } catch (error) {
      failures.push(error);
    }
  }
  if (failures.length > 0) throw failures[0];
}

async function start(
  options: AgentOptions,
  closers: (() => void | Promise<void>)[],
  stop: () => Promise<void>,
  log: Logger,
): Promise<Agent> {
  const startedAt = performance.now();
  const fault = (error: unknown, where = 'upkeep'): void =>
    log.error({ err: error, where }, 'an internal fault');
  const { ballastBytes = limits.ballastBytes, sealEveryMs = limits.sealEveryMs } = options;
  const store = openStore(options.folder, { now: () => Date.now(), ballastBytes });
  closers.push(() => store.close());
  let door: Door | null = null;
  let ports: CorePorts | null = null;
  const core = new Core({
    store,
    source: options.source,
    mode: options.mode,
    clock: options.clock ?? systemClock,
    version,
    sealEveryMs,
    tell: (news) => ports?.tell(news),
    warn: (facts, message) => log.warn(facts, message),
  });
  closers.push(
    () => store.stopRun(core.live.engineNow ?? 0),
    () => store.note(),
    // Its segment is written, or the next run seals these samples again.
    () => core.sealing.ended(),
    () => stopLive(core, log),
  );
  const charts = new SeriesReader(options.folder);
  closers.push(() => charts.close());
  const findings = store.findings.filter(isAlarming).map(findingWords);
  const damage = new DamageBook((found) => {
    core.record({ type: 'damage', at: Date.now(), ...found });
    log.warn(found, 'stored samples are damaged');
  });
  const upkeep = new Upkeep({
    core,
    spaceBytes: options.spaceBytes ?? limits.spaceBytesDefault,
    fault,
    refused: (error) => log.warn({ err: error }, 'the disk refuses'),
    healthMayHaveChanged: () => changes.look(),
  });
  const healthNow = () =>
    healthParts({
      version,
      uptimeS: Math.round((performance.now() - startedAt) / 1_000),
      diskRefusal: core.journal.state.refusal,
      choreRefusal: upkeep.refused,
      diskFreeBytes: store.sizes().diskFreeBytes,
      diskFreeBytesMin: limits.freeBytesMin,
      clockInDoubt: core.clock.inDoubt,
      sealingFailed: core.sealingFailed,
      findings: [...findings, ...damage.words()],
      doorOpen: door !== null,
      turnAgeMs: performance.now() - upkeep.lookedAt,
      unjudgedRules: ports?.unjudgedRules().size ?? 0,
    });
  ports = new CorePorts({
    core,
    charts,
    damaged: (found) => damage.note(found),
    health: healthNow,
    figures: () =>
      figures({
        intake: core.intake,
        journal: core.journal.state,
        sizes: store.sizes(),
        door: door?.counters ?? null,
        openOccurrences: core.desk.open().length,
        holds: core.desk.heldNow().length,
        samples: core.samples.cursor,
      }),
  });
  const changes = new HealthChanges(ports);
  upkeep.start(options.mode);
  closers.push(() => upkeep.stop());
  const web: Web = await startWeb({ ...options.http, version, ports, onFault: fault });
  closers.push(() => web.close());
  door = await openDoor({
    ...options.mqtt,
    devices: await openDevices(join(options.folder, 'devices.json'), {
      verificationsMax: limits.mqttVerificationsMax,
      verificationsWaitingMax: limits.mqttVerificationsWaitingMax,
      secretBytesMax: limits.mqttSecretBytesMax,
    }),
    devicesReloadMs: limits.mqttDevicesReloadMs,
    limits: doorLimits,
    take: ({ topic, payload, qos }, done) => core.live.take(topic, payload, false, qos, done),
    log,
  });
  closers.push(() => door?.close());
  const mqtt = `mqtt://${urlHost(options.mqtt.host)}:${door.port}`;
  return { page: web.url, mqtt, folder: options.folder, stop };
}

function stopLive(core: Core, log: Logger): void {
  core.live.stop();
  const { waitingRows, refusal } = core.journal.state;
  if (refusal !== null) log.warn({ waitingRows, err: refusal }, 'stopped with the disk refusing');
}

/** Tells listeners when a part's condition changes. */
class HealthChanges {
  private readonly ports: CorePorts;
  private last = '';

  constructor(ports: CorePorts) {
    this.ports = ports;
  }

  look(): void {
    const { parts } = this.ports.health();
    const now = JSON.stringify(parts);
    if (this.last !== '' && now !== this.last) this.ports.tellHealth();
    this.last = now;
  }
}
