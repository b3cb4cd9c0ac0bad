/**
 * The agent put together: the only file that knows every part. Start and stop order are lists.
 */
import { join } from 'node:path';
import type { Logger } from 'pino';
import { devicesFileName } from '#broker/credentials.ts';
import { openDevices } from '#broker/devices.ts';
import { type Door, openDoor } from '#broker/door.ts';
import { systemClock } from './clock/engine-clock.ts';
import { limits } from './limits.ts';
import { isDamage } from './store/disk-error.ts';
import { SeriesReader } from './store/series-reader.ts';
import { openStore, type Store } from './store/store.ts';
import { version } from './version.ts';
import { startWeb, type Web } from './web/server.ts';
import type { Agent, AgentOptions } from './wiring/agent-options.ts';
import { closeAll } from './wiring/close-all.ts';
import { Core } from './wiring/core.ts';
import { DamageBook } from './wiring/damage-book.ts';
import { doorLimits, secretLimits } from './wiring/door-limits.ts';
import { tellDevices } from './wiring/door-words.ts';
import { findingWords, isAlarming, isLoss } from './wiring/finding-words.ts';
import { HealthChanges } from './wiring/health-changes.ts';
import { House, nobodyAsked } from './wiring/house.ts';
import { pageFolder } from './wiring/page-folder.ts';
import { sayAlive } from './wiring/say-alive.ts';
import { SiteDesk } from './wiring/site-desk.ts';
import { tellingNote } from './wiring/telling-health.ts';
import { TellingHouse } from './wiring/telling-house.ts';
import { tellingPorts } from './wiring/telling-view.ts';
import { Upkeep } from './wiring/upkeep.ts';
import { figuresOf, healthOf, illness, type Running } from './wiring/vitals.ts';
import { CorePorts } from './wiring/web-ports.ts';

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
  private closers: (() => void | Promise<void>)[] = [];
  private store!: Store;
  private core!: Core;
  private charts!: SeriesReader;
  private damage!: DamageBook;
  private upkeep!: Upkeep;
  private ports: CorePorts | null = null;
  private web!: Web;
  private telling: TellingHouse | null = null;
  private way: Pick<Agent, 'setup' | 'fingerprint'> = { setup: null, fingerprint: null };
  private door: Door | null = null;
  private siteDesk: SiteDesk | null = null;
  private ready = false;
  private lockRemadeAt: number | null = null;

  constructor(options: AgentOptions) {
    this.options = options;
  }

  async start(): Promise<Agent> {
    this.openRecord();
    this.openCharts();
    this.beginUpkeep();
    this.watchSiteFile();
    await this.openPage();
    const door = await this.openDoor();
    const { core, ports, options } = this;
    const ill = (): string | null => illness(this.running());
    this.closers.push(...sayAlive({ core, ports: ports!, door, ill, log: options.log }));
    this.ready = true;
    this.telling!.started();
    return {
      page: this.web.url,
      mqtt: `mqtt://${urlHost(options.mqtt.host)}:${door.port}`,
      folder: options.folder,
      ...this.way,
      tellingNote: tellingNote(core),
      reload: async (by) => (await this.siteDesk?.load(by)) ?? null,
      stop: () => this.stop(),
    };
  }

  /** In the opposite order. */
  stop(): Promise<void> {
    return closeAll(this.closers.splice(0).reverse());
  }

  private openStore(): void {
    const { folder, ballastBytes = limits.ballastBytes } = this.options;
    const store = openStore(folder, { now: () => Date.now(), ballastBytes });
    this.store = store;
    // A start that failed leaves nothing that was not there before.
    this.closers.push(() => (this.ready ? store.close() : store.abandon()));
    for (const finding of store.findings.filter(isAlarming))
      this.options.log[isLoss(finding) ? 'error' : 'warn']({ finding }, findingWords(finding));
  }

  /** What turns out to be damaged while it is taken up is looked at whole, and set aside. */
  private openRecord(): void {
    this.openStore();
    try {
      this.openCore();
    } catch (error) {
      if (!isDamage(error)) throw error;
      this.options.log.error({ err: error }, 'the database is damaged; it is opened once more');
      this.store.noteDamage();
      this.closers = [];
      this.store.close();
      this.openStore();
      this.openCore();
    }
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
      telling: (begun) => this.openTelling(begun).options,
      warn: (facts, message) => log.warn(facts, message),
    });
    this.core = core;
    this.telling?.start();
    this.closers.push(
      () => core.extensions.close(),
      () => store.stopRun(core.live.engineNow ?? 0),
      () => void store.backUpSettings(Date.now()),
      () => store.note(),
      // Its segment is written, or the next run seals these samples again.
      () => core.sealing.ended(),
      () => stopLive(core, log),
      () => core.telling?.stop(),
      () => this.telling?.stop(),
    );
  }

  private openTelling(core: Core): TellingHouse {
    const { folder, siteFile, channels, tellAlso: others = [], log } = this.options;
    const telling = new TellingHouse(core, {
      folder,
      siteFile: siteFile?.file ?? null,
      others,
      page: () => this.web?.url ?? null,
      warn: (error) => log.warn({ err: error }, error.message),
      fault: (error) => this.fault(error, 'telling'),
      ...(channels === undefined ? {} : { channels }),
    });
    this.telling = telling;
    return telling;
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
      attend: () => this.attend(),
      forecastsMayHaveMoved: () => this.ports?.tellForecasts(),
    });
    this.upkeep.start(mode);
    this.closers.push(() => this.upkeep.stop());
  }

  /** Are the files being written still the folder's? */
  private attend(): void {
    if (!this.store.attend()) return;
    this.lockRemadeAt = Date.now();
    this.core.record({ type: 'lock-made-again', at: this.lockRemadeAt });
    this.options.log.error('agent.lock was removed under the running agent; it is made again');
  }

  private watchSiteFile(): void {
    const { siteFile } = this.options;
    if (siteFile === undefined) return;
    const { core } = this;
    const desk = new SiteDesk({
      ...siteFile,
      running: () => core.plans.source,
      change: (source, by) => {
        const changes = core.site.change(source, by);
        if (changes.changes.length > 0) this.ports?.tellSite();
        return changes;
      },
      record: (body) => core.record(body),
      fault: (error) => this.fault(error, 'site file'),
    });
    this.siteDesk = desk;
    this.closers.push(desk.start());
  }

  private async openPage(): Promise<void> {
    const { core, charts } = this;
    const ports = new CorePorts({
      core,
      charts,
      damaged: (found) => this.damage.note(found),
      health: () => healthOf(this.running()),
      siteDesk: this.siteDesk,
      figures: () => figuresOf(this.running()),
    });
    this.ports = ports;
    const onFault = (error: unknown, where: string): void => this.fault(error, where);
    const house = await this.openHouse(onFault);
    const { desk: people, names } = house;
    const tls = house.tls ?? undefined;
    const { http } = this.options;
    const told = { telling: tellingPorts(core), push: this.telling!.push };
    const parts = { ports, people, ...told, tls, names, pageFolder, onFault };
    this.web = await startWeb({ ...http, version, ...parts });
    this.closers.push(() => this.web.close());
    this.way = { setup: house.opened(this.web), fingerprint: house.fingerprint };
  }

  private async openHouse(fault: (error: unknown, where: string) => void): Promise<House> {
    const { folder, http, house: options = nobodyAsked } = this.options;
    const house = await House.open({ core: this.core, folder, host: http.host, options, fault });
    this.closers.push(() => house.close());
    return house;
  }

  private async openDoor(): Promise<Door> {
    const { folder, mqtt, log } = this.options;
    const { live } = this.core;
    await this.options.admit?.();
    const door = await openDoor({
      ...mqtt,
      devices: await openDevices(join(folder, devicesFileName), secretLimits),
      devicesReloadMs: limits.mqttDevicesReloadMs,
      limits: doorLimits,
      take: ({ topic, payload, qos, user, clientId }, done) =>
        live.take(topic, payload, false, qos, done, user ?? clientId),
      turnedAway: ({ topic, payload, user, clientId }, why) =>
        this.core.intake.turnedAway(topic, payload, user ?? clientId, why, Date.now()),
      log,
    });
    this.door = door;
    tellDevices(door.devicesProblem(), log);
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

  private running(): Running {
    const { core, store, upkeep, damage, siteDesk, door, lockRemadeAt } = this;
    return { core, store, upkeep, damage, siteDesk, door, lockRemadeAt };
  }
}

function stopLive(core: Core, log: Logger): void {
  core.live.stop();
  const { waitingRows, refusal } = core.journal.state;
  if (refusal !== null) log.warn({ waitingRows, err: refusal }, 'stopped with the disk refusing');
}
