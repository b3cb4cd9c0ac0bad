/**
 * The gateways of the demo line: MQTT clients like any other, each with a user and a secret of
 * its own, that publish what the plant does as its clock goes on.
 */
import mqtt, { type MqttClient } from 'mqtt';
import { type Gateway, gateways, messages } from './messages.ts';
import type { Plant } from './plant.ts';

/** So many seconds of the line in one of a clock. */
export type TimesFaster = number;

export interface LineOptions {
  /** `mqtt://host:port`. */
  readonly url: string;
  readonly secrets: Readonly<Record<Gateway, string>>;
  readonly plant: Plant;
  /** Second 0 of the line. */
  readonly showAtMs: number;
  /** The plant's time. */
  readonly nowMs: () => number;
  /** How fast the plant's time goes against a real clock. */
  readonly speed: TimesFaster;
  readonly warn: (facts: object, message: string) => void;
}

export interface RunningLine {
  stop(): Promise<void>;
}

const tickMsMin = 20;
const tickMsMax = 250;
/** A sleep of the machine longer than this is not made up for. */
const catchUpSMax = 120;

/** Connects every gateway, then lets the line run. Throws where a gateway is refused. */
export async function runLine(options: LineOptions): Promise<RunningLine> {
  const { url, secrets, warn } = options;
  const clients = new Map<Gateway, MqttClient>();
  for (const gateway of gateways) {
    const client = await mqtt.connectAsync(url, {
      clientId: gateway,
      username: gateway,
      password: secrets[gateway],
      reconnectPeriod: 1_000,
    });
    client.on('error', (error) => warn({ gateway, err: error }, 'a demo gateway lost its way'));
    clients.set(gateway, client);
  }
  const line = new Line(options, clients);
  const tickMs = Math.min(tickMsMax, Math.max(tickMsMin, 1_000 / options.speed));
  const timer = setInterval(() => line.tick(), tickMs);
  return {
    stop: async () => {
      clearInterval(timer);
      await Promise.all([...clients.values()].map((client) => client.endAsync(true)));
    },
  };
}

class Line {
  private readonly options: LineOptions;
  private readonly clients: ReadonlyMap<Gateway, MqttClient>;
  private doneS: number;

  constructor(options: LineOptions, clients: ReadonlyMap<Gateway, MqttClient>) {
    this.options = options;
    this.clients = clients;
    this.doneS = this.secondNow() - 1;
  }

  private secondNow(): number {
    return Math.floor((this.options.nowMs() - this.options.showAtMs) / 1_000);
  }

  /** Every second since the last tick, in order, as the gateways would have lived it. */
  tick(): void {
    const toS = this.secondNow();
    const fromS = Math.max(this.doneS, toS - catchUpSMax * Math.max(1, this.options.speed));
    for (let second = fromS + 1; second <= toS; second += 1) this.publish(second);
    this.doneS = Math.max(this.doneS, toS);
  }

  private publish(second: number): void {
    const { plant, showAtMs, warn } = this.options;
    const now = plant.moveTo(showAtMs + second * 1_000);
    for (const [index, message] of messages.entries()) {
      if ((second + index) % message.everyS !== 0) continue;
      const payload = message.payload(plant, now, index);
      const client = this.clients.get(message.gateway);
      if (payload === null || client?.connected !== true) continue;
      client.publish(message.topic, payload, { qos: message.qos }, (error) => {
        if (error && !client.disconnecting)
          warn({ topic: message.topic, err: error }, 'a demo reading did not arrive');
      });
    }
  }
}
