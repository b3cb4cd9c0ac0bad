/**
 * Sensors that publish with QoS 1 as fast as the agent acknowledges, and remember what they sent
 * and what was acknowledged. What was not acknowledged is sent again after the next connect.
 */
import type { MqttClient } from 'mqtt';
import { connectDevice, type TestDevice } from '#tests/agent-process.ts';
import { keyOf, reading, rooms } from './small-works.ts';

interface Message {
  readonly signal: string;
  readonly key: number;
  readonly topic: string;
  readonly payload: string;
}

const inFlight = 12;
const pauseMs = 2;
const probeEvery = 60;
const probesMax = 20;

class Sensor {
  readonly unacknowledged = new Set<Message>();
  private readonly room: number;
  private count = 0;
  private lastMs = 0;

  constructor(room: number) {
    this.room = room;
  }

  next(probing: boolean): Message[] {
    this.count += 1;
    const { room } = this;
    const value = reading(this.count);
    const key = keyOf(value);
    // Its own time, never the same twice.
    this.lastMs = Math.max(this.lastMs + 1, Date.now());
    const own = JSON.stringify({ v: value, t: this.lastMs });
    const messages = [
      { signal: `hall/bench/own-${room}`, key, topic: `hall/${room}/own`, payload: own },
      { signal: `hall/bench/plain-${room}`, key, topic: `hall/${room}/plain`, payload: `${value}` },
    ];
    if (!probing || this.count % probeEvery !== 1) return messages;
    // A probe that nobody has heard before; later one that is known.
    const probe = `p${room}-${Math.floor(this.count / probeEvery) % probesMax}`;
    const signal = `hall/bench/probe-${probe}`;
    return [...messages, { signal, key, topic: `hall/${probe}/probe`, payload: `${value}` }];
  }
}

export class Publishers {
  /** By signal: keys of the values. */
  readonly sent = new Map<string, Set<number>>();
  readonly acknowledged = new Map<string, Set<number>>();
  /** Sensors that nobody has heard before speak up as well. */
  probing = true;
  /** Connections that ended before they were told to. */
  dropped = 0;
  private readonly sensors = rooms.map((room) => new Sensor(room));
  private clients: MqttClient[] = [];
  private running = false;

  get acknowledgedCount(): number {
    return [...this.acknowledged.values()].reduce((sum, keys) => sum + keys.size, 0);
  }

  get waiting(): number {
    return this.sensors.reduce((sum, { unacknowledged }) => sum + unacknowledged.size, 0);
  }

  async start(url: string, device: TestDevice): Promise<void> {
    this.running = true;
    this.clients = await Promise.all(
      this.sensors.map(async () => {
        const client = await connectDevice(url, device);
        // A killed agent resets its connections, those too that wait for the others to be made.
        client.on('error', () => undefined);
        return client;
      }),
    );
    for (const [i, sensor] of this.sensors.entries()) {
      const client = this.clients[i]!;
      client.once('close', () => {
        if (this.running) this.dropped += 1;
      });
      for (const message of sensor.unacknowledged) this.send(client, sensor, message);
      this.drive(client, sensor);
    }
  }

  /** Nothing new is sent; waits for what is in flight, or leaves it. */
  async stop(wait = true): Promise<void> {
    this.running = false;
    const deadline = Date.now() + 15_000;
    while (wait && this.waiting > 0) {
      if (Date.now() > deadline) throw new Error(`${this.waiting} messages unacknowledged`);
      await new Promise((done) => setTimeout(done, 20));
    }
    for (const client of this.clients) client.end(true);
    this.clients = [];
  }

  private drive(client: MqttClient, sensor: Sensor): void {
    const timer = setInterval(() => {
      if (!this.running || !client.connected) clearInterval(timer);
      else if (sensor.unacknowledged.size < inFlight)
        for (const message of sensor.next(this.probing)) this.send(client, sensor, message);
    }, pauseMs);
  }

  private send(client: MqttClient, sensor: Sensor, message: Message): void {
    const { signal, key, topic, payload } = message;
    noted(this.sent, signal, key);
    sensor.unacknowledged.add(message);
    client.publish(topic, payload, { qos: 1 }, (error) => {
      if (error) return;
      sensor.unacknowledged.delete(message);
      noted(this.acknowledged, signal, key);
    });
  }
}

export function noted(map: Map<string, Set<number>>, signal: string, key: number): void {
  const keys = map.get(signal) ?? new Set();
  map.set(signal, keys.add(key));
}
