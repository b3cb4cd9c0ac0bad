/** Everything by which the agent says that it lives and what stands: MQTT, and the service manager. */
import type { Logger } from 'pino';
import type { Door } from '#broker/door.ts';
import { isDiskRefusal } from '../errors.ts';
import { limits } from '../limits.ts';
import { checkpointKey, signedCheckpoint } from '../store/checkpoint.ts';
import type { Core } from './core.ts';
import { isNotOver, MqttOut } from './mqtt-out.ts';
import { serviceWatchdog } from './service-watchdog.ts';
import type { CorePorts } from './web-ports.ts';

export interface SayAliveParts {
  readonly core: Core;
  readonly ports: CorePorts;
  readonly door: Door;
  /** Why it must not call itself alive; null while it may. */
  readonly ill: () => string | null;
  readonly log: Logger;
}

/** Gives what ends each, in the order of its beginning. */
export function sayAlive({
  core,
  ports,
  door,
  ill,
  log,
}: SayAliveParts): (() => void | Promise<void>)[] {
  const out = new MqttOut({
    site: () => core.plans.name,
    publish: (topic, payload) => door.publish(topic, payload, { retain: true, qos: 1 }),
    standing: () => ports.alarms({ limit: limits.answerRowsMax }).filter(isNotOver),
    now: () => Date.now(),
    ill,
    failed: (error) => log.error({ err: error }, 'nothing was said by MQTT'),
    everyMs: limits.heartbeatMs,
  });
  out.start();
  const checkpoints = new Checkpoints(core, out, log);
  checkpoints.look();
  const looks = setInterval(() => checkpoints.look(), lookMs);
  const quiet = ports.subscribe((event) => out.told(event));
  const ended = serviceWatchdog({
    env: process.env,
    ill,
    failed: (error) => log.warn({ err: error }, 'the service manager was not told'),
  });
  return [() => out.stop(), quiet, ended, () => clearInterval(looks)];
}

const lookMs = 60_000;

/** Says the signed head of the ledger once a day; where the disk refuses the key, a minute later. */
class Checkpoints {
  private readonly core: Core;
  private readonly out: MqttOut;
  private readonly log: Logger;
  private saidAtMs = Number.NEGATIVE_INFINITY;

  constructor(core: Core, out: MqttOut, log: Logger) {
    this.core = core;
    this.out = out;
    this.log = log;
  }

  look(): void {
    const { store, plans } = this.core;
    const head = store.ledgerHead;
    const nowMs = Date.now();
    if (head.id === 0 || nowMs - this.saidAtMs < limits.checkpointEveryMs) return;
    try {
      const key = checkpointKey(store.folder);
      this.out.checkpoint(signedCheckpoint(key, plans.name, head, nowMs));
      this.saidAtMs = nowMs;
    } catch (error) {
      if (!isDiskRefusal(error)) throw error;
      this.log.warn({ err: error }, 'the disk refuses the key that signs checkpoints');
    }
  }
}
