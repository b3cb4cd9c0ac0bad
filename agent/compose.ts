/**
 * The agent put together: the only file that knows every part. Start and stop order are lists.
 */
import { join } from 'node:path';
import type { Logger } from 'pino';
import { devicesFileName } from '#broker/credentials.ts';
import { openDevices } from '#broker/devices.ts';
import { type Door, openDoor } from '#broker/door.ts';
import { type ClockSource, systemClock } from './clock/engine-clock.ts';
import { limits } from './limits.ts';
import type { SiteSource } from './site/revision.ts';
import { SeriesReader } from './store/series-reader.ts';
import { openStore, type Store } from './store/store.ts';
import { version } from './version.ts';
import type { Figure, HealthParts } from './web/ports.ts';
import { startWeb, type Web } from './web/server.ts';
import { Core } from './wiring/core.ts';
import { DamageBook } from './wiring/damage-book.ts';
import { doorLimits, secretLimits } from './wiring/door-limits.ts';
import { figures } from './wiring/figures.ts';
import { findingWords, isAlarming } from './wiring/finding-words.ts';
import { healthParts } from './wiring/health.ts';
import { pageFolder } from './wiring/page-folder.ts';
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

const urlHost = (host: string): string => (host.includes(':') ? `[${host}]` : host);

/** Throws AgentError or DoorError where it cannot start; what was opened is closed again. */
export async function startAgent(options: AgentOptions): Promise<Agent> {
  const assembly = new Assembly(options);
  try {
    return await assembly.start();
  } catch (error) {
    // Why it could not start is what people must hear.
    await assembly
      .stop()
      .catch((another) => options.log.warn({ err: another }, 'closing failed as well'));
    throw error;
  }
}

class Assembly {
  private readonly options: AgentOptions;
  private readonly startedAt = performance.now();
  private closers: (() => void | Promise<void>)[] = [];
  private store!: Store;
  private core!: Core;
  private charts!: SeriesReader;
  private damage!: DamageBook;
  private upkeep!: Upkeep;
  private ports: CorePorts | null = null;
  private web!: Web;
  private door: Door | null = null;

  constructor(options: AgentOptions) {
    this.options = options;
  }

  async start(): Promise<Agent> {
    this.openStore();
    this.openCore();
    this.openCharts();
    this.beginUpkeep();
    await this.openPage();
    const door = await this.openDoor();
    const { folder, mqtt } = this.options;
    return {
      page: this.web.url,
      mqtt: `mqtt://${urlHost(mqtt.host)}:${door.port}`,
      folder,
      stop: () => this.stop(),
    };
  }

  /** In the opposite order. */
  stop(): Promise<void> {
    return closeAll(this.closers.splice(0).reverse());
  }

  private openStore(): void {
    const { folder, ballastBytes = limits.ballastBytes } = this.options;
    this.store = openStore(folder, { now: () => Date.now(), ballastBytes });
    this.closers.push(() => this.store.close());
  }

  private openCore(): void {
    const {
      source,
      mode,
      clock = systemClock,
      sealEveryMs = limits.sealEveryMs,
      log,
    } = this.options;
    const { store } = this;
    const core = new Core({
      store,
      source,
      mode,
      clock,
      version,
      sealEveryMs,
      tell: (news) => this.ports?.tell(news),
      warn: (facts, message) => log.warn(facts, message),
    });
    this.core = core;
    this.closers.push(
      () => store.stopRun(core.live.engineNow ?? 0),
      () => store.note(),
      // Its segment is written, or the next run seals these samples again.
      () => core.sealing.ended(),
      () => stopLive(core, log),
    );
  }

  private openCharts(): void {
    this.charts = new SeriesReader(this.options.folder);
    this.closers.push(() => this.charts.close());
    this.damage = new DamageBook((found) => {
      this.core.record({ type: 'damage', at: Date.now(), ...found });
      this.options.log.warn(found, 'stored samples are damaged');
    });
  }

  private beginUpkeep(): void {
    const { mode, spaceBytes = limits.spaceBytesDefault, log } = this.options;
    const { core } = this;
    const changes = new HealthChanges(() => this.ports);
    this.upkeep = new Upkeep({
      core,
      spaceBytes,
      fault: (error) => this.fault(error, 'upkeep'),
      refused: (error) => log.warn({ err: error }, 'the disk refuses'),
      healthMayHaveChanged: () => changes.look(),
    });
    this.upkeep.start(mode);
    this.closers.push(() => this.upkeep.stop());
  }

  private async openPage(): Promise<void> {
    const { core, charts } = this;
    const ports = new CorePorts({
      core,
      charts,
      damaged: (found) => this.damage.note(found),
      health: () => this.health(),
      figures: () => this.figures(),
    });
    this.ports = ports;
    const onFault = (error: unknown, where: string): void => this.fault(error, where);
    this.web = await startWeb({ ...this.options.http, version, ports, pageFolder, onFault });
    this.closers.push(() => this.web.close());
  }

  private async openDoor(): Promise<Door> {
    const { folder, mqtt, log } = this.options;
    const { live } = this.core;
    const door = await openDoor({
      ...mqtt,
      devices: await openDevices(join(folder, devicesFileName), secretLimits),
      devicesReloadMs: limits.mqttDevicesReloadMs,
      limits: doorLimits,
      take: ({ topic, payload, qos }, done) => live.take(topic, payload, false, qos, done),
      log,
    });
    this.door = door;
    // What was taken is acknowledged while its publishers are still there to hear it.
    this.closers.push(
      () => door.close(),
      () => {
        live.settle();
      },
    );
    return door;
  }

  private fault(error: unknown, where: string): void {
    this.options.log.error({ err: error, where }, 'an internal fault');
  }

  private health(): HealthParts {
    const { core, store, upkeep } = this;
    const findings = store.findings.filter(isAlarming).map(findingWords);
    return healthParts({
      version,
      uptimeS: Math.round((performance.now() - this.startedAt) / 1_000),
      diskRefusal: core.journal.state.refusal,
      choreRefusal: upkeep.refused,
      diskFreeBytes: store.sizes().diskFreeBytes,
      diskFreeBytesMin: limits.freeBytesMin,
      clockInDoubt: core.clockInDoubt,
      sealingFailed: core.sealingFailed,
      findings: [...findings, ...this.damage.words()],
      doorOpen: this.door !== null,
      turnAgeMs: performance.now() - upkeep.lookedAt,
      unjudgedRules: this.ports?.unjudgedRules().size ?? 0,
    });
  }

  private figures(): Figure[] {
    const { core, store, door } = this;
    return figures({
      intake: core.intake,
      journal: core.journal.state,
      sizes: store.sizes(),
      door: door?.counters ?? null,
      openOccurrences: core.desk.open().length,
      holds: core.desk.heldNow().length,
      samples: core.samples.cursor,
    });
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

function stopLive(core: Core, log: Logger): void {
  core.live.stop();
  const { waitingRows, refusal } = core.journal.state;
  if (refusal !== null) log.warn({ waitingRows, err: refusal }, 'stopped with the disk refusing');
}

/** Tells listeners when a part's condition changes. */
class HealthChanges {
  private readonly ports: () => CorePorts | null;
  private last = '';

  constructor(ports: () => CorePorts | null) {
    this.ports = ports;
  }

  look(): void {
    const ports = this.ports();
    if (ports === null) return;
    const now = JSON.stringify(ports.health().parts);
    if (this.last !== '' && now !== this.last) ports.tellHealth();
    this.last = now;
  }
}
