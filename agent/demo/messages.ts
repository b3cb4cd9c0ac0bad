/**
 * What the gateways of the demo line publish: topic, rhythm, payload. docs/examples/demo-works
 * binds every one of them.
 */
import type { Moment } from './moment.ts';
import type { Plant } from './plant.ts';
import { fahrenheit, psi, reading, type Sensor } from './sensor.ts';

export const gateways = ['gateway-wet', 'gateway-spray', 'gateway-heat'] as const;
export type Gateway = (typeof gateways)[number];

export interface Message {
  readonly gateway: Gateway;
  readonly topic: string;
  readonly everyS: number;
  readonly qos: 0 | 1;
  /** The payload; null while the sensor says nothing. */
  readonly payload: (plant: Plant, now: Moment, channel: number) => string | null;
}

/** Every topic begins with the line. */
export const line = 'bushings-1';

/** What each gateway may publish. */
export const filtersOf: Readonly<Record<Gateway, readonly string[]>> = {
  'gateway-wet': ['store-1', 'mixer-1', 'prep-1', 'tank-1'].map(under),
  'gateway-spray': ['booth-1', 'air-1'].map(under),
  'gateway-heat': ['oven-1', 'residue-1', 'racks-1', 'press-1'].map(under),
};

function under(station: string): string {
  return `${line}/${station}/#`;
}

const thermocouple: Sensor = { noise: 0.12, digits: 1 };
const resistance: Sensor = { noise: 0.04, digits: 2 };

type Value = (plant: Plant, now: Moment) => number;

const plain =
  (value: Value, sensor: Sensor): Message['payload'] =>
  (plant, now, channel) =>
    reading(now, channel, value(plant, now), sensor);

/** `{"v": value, "t": milliseconds}`: the sensor's own clock. */
const timed =
  (value: Value, sensor: Sensor): Message['payload'] =>
  (plant, now, channel) =>
    `{"v":${reading(now, channel, value(plant, now), sensor)},"t":${now.atMs}}`;

/** Several values in one object, each with its sensor. */
const together =
  (values: Readonly<Record<string, readonly [Value, Sensor]>>): Message['payload'] =>
  (plant, now, channel) => {
    const said = Object.entries(values).map(
      ([name, [value, sensor]], i) =>
        `"${name}":${reading(now, channel * 16 + i, value(plant, now), sensor)}`,
    );
    return `{${said.join(',')}}`;
  };

const contact: Sensor = { noise: 0, digits: 0 };

const wet: readonly Omit<Message, 'gateway'>[] = [
  {
    topic: 'store-1/wall',
    everyS: 10,
    qos: 1,
    payload: (plant, now, channel) =>
      now.fault('store-wall-silent') > 0
        ? null
        : timed((p) => p.store.wallC, resistance)(plant, now, channel),
  },
  {
    topic: 'store-1/air',
    everyS: 30,
    qos: 0,
    payload: (plant, now, channel) =>
      now.fault('store-air-hangs') > 0
        ? '64.2'
        : plain((p) => fahrenheit(p.store.airC), { noise: 0.15, digits: 1 })(plant, now, channel),
  },
  {
    topic: 'store-1/humidity',
    everyS: 30,
    qos: 0,
    payload: (plant, now, channel) =>
      now.fault('store-humidity-nonsense') > 0
        ? 'nan'
        : plain((p) => p.store.humidityPercent, { noise: 0.3, digits: 1 })(plant, now, channel),
  },
  {
    topic: 'mixer-1/state',
    everyS: 5,
    qos: 0,
    payload: together({
      rpm: [(p) => p.drum.perMin, { noise: 0.1, digits: 1, least: 0 }],
      in_use: [(p) => p.drum.inUse, contact],
      level: [(p) => p.drum.levelMm, { noise: 0.4, digits: 0 }],
    }),
  },
  {
    topic: 'prep-1/rinse',
    everyS: 10,
    qos: 0,
    payload: plain((p) => p.preparation.rinseUSPerCm, { noise: 0.2, digits: 1 }),
  },
  {
    topic: 'prep-1/blast',
    everyS: 10,
    qos: 0,
    payload: plain((p) => psi(Math.min(5.6, p.air.headerBar - 0.5)), { noise: 0.2, digits: 1 }),
  },
  {
    topic: 'tank-1/bath',
    everyS: 10,
    qos: 1,
    payload: together({
      temperature: [(p) => p.bath.bathC, resistance],
      solids: [(p) => p.bath.solidsPercent, { noise: 0.05, digits: 1 }],
      tank: [(p) => p.bath.tankMm, { noise: 0.5, digits: 0 }],
      weir: [(p) => p.bath.weirMm, { noise: 0.5, digits: 0 }],
    }),
  },
  {
    topic: 'tank-1/loop',
    everyS: 5,
    qos: 0,
    payload: together({
      flow: [(p) => p.bath.flowLPerMin, { noise: 0.3, digits: 1 }],
      dp: [(p) => p.bath.filterBar, { noise: 0.004, digits: 3 }],
    }),
  },
  {
    topic: 'tank-1/hoist',
    everyS: 5,
    qos: 0,
    payload: together({
      speed: [(p) => p.bath.withdrawalMPerMin, { noise: 0.01, digits: 2, least: 0 }],
      up: [(p) => p.bath.withdrawing, contact],
    }),
  },
];

const spray: readonly Omit<Message, 'gateway'>[] = [
  {
    topic: 'booth-1/exhaust',
    everyS: 2,
    qos: 1,
    payload: together({
      velocity: [(p) => p.booth.faceMPerS, { noise: 0.006, digits: 2 }],
      dp: [(p) => p.booth.filterPa, { noise: 1, digits: 0 }],
    }),
  },
  {
    topic: 'booth-1/gun',
    everyS: 2,
    qos: 0,
    payload: together({
      spraying: [(p) => p.booth.spraying, contact],
      pot_psi: [(p) => psi(p.booth.potBar), { noise: 0.05, digits: 1 }],
      atomising: [(p) => p.booth.atomisingBar, { noise: 0.01, digits: 2 }],
    }),
  },
  {
    topic: 'air-1/dryer',
    everyS: 30,
    qos: 0,
    payload: (plant, now, channel) =>
      `{"dew_point":${reading(now, channel, plant.air.dewPointC, { noise: 0.1, digits: 1 })},"ok":true}`,
  },
  {
    topic: 'air-1/pipe',
    everyS: 30,
    qos: 0,
    payload: plain((p) => p.air.pipeC, thermocouple),
  },
  {
    topic: 'air-1/header',
    everyS: 5,
    qos: 0,
    payload: plain((p) => p.air.headerBar, { noise: 0.01, digits: 2 }),
  },
  {
    topic: 'air-1/separator',
    everyS: 30,
    qos: 0,
    payload: plain((p) => psi(p.air.separatorBar), { noise: 0.02, digits: 2 }),
  },
];

const heat: readonly Omit<Message, 'gateway'>[] = [
  {
    topic: 'oven-1/zones',
    everyS: 5,
    qos: 1,
    payload: together({
      z1: [(p) => p.oven.zoneC[0], thermocouple],
      z1b: [(p) => p.oven.zoneC[0] + p.oven.checkOffK, thermocouple],
      z2: [(p) => p.oven.zoneC[1], thermocouple],
    }),
  },
  {
    topic: 'oven-1/state',
    everyS: 2,
    qos: 1,
    payload: together({
      conveyor: [(p, now) => p.oven.moving(now), contact],
      heat: [(p) => (p.oven.heatW > 500 ? 1 : 0), contact],
      exhaust: [(p) => (p.oven.exhaustPa > 60 ? 1 : 0), contact],
      exhaust_pa: [(p) => p.oven.exhaustPa, { noise: 0.8, digits: 1 }],
    }),
  },
  {
    topic: 'oven-1/rack/metal',
    everyS: 5,
    qos: 1,
    payload: timed((p) => p.oven.rack.metalC, thermocouple),
  },
  {
    topic: 'oven-1/rack/loaded',
    everyS: 5,
    qos: 1,
    payload: timed((p) => p.oven.loaded, contact),
  },
  ...(
    [
      ['floor', (p) => p.residue.floorC],
      ['shroud', (p) => p.residue.shroudC],
      ['filter', (p) => p.residue.filterC],
    ] as readonly (readonly [string, Value])[]
  ).map(([place, value]) => ({
    topic: `residue-1/surface/${place}`,
    everyS: 2,
    qos: 1 as const,
    payload: timed(value, thermocouple),
  })),
  ...(
    [
      ['floor', (p) => p.residue.floorAirC],
      ['shroud', (p) => p.oven.zoneC[0]],
      ['filter', (p) => p.oven.zoneC[1] - 9],
    ] as readonly (readonly [string, Value])[]
  ).map(([place, value]) => ({
    topic: `residue-1/air/${place}`,
    everyS: 2,
    qos: 1 as const,
    payload: timed(value, thermocouple),
  })),
  {
    topic: 'residue-1/thickness',
    everyS: 60,
    qos: 1,
    payload: plain((p, now) => p.residue.gaugedMm(now), { noise: 0, digits: 1 }),
  },
  {
    topic: 'residue-1/bin',
    everyS: 10,
    qos: 1,
    payload: plain((p) => p.residue.binC, thermocouple),
  },
  {
    topic: 'residue-1/bin-air',
    everyS: 30,
    qos: 0,
    payload: plain((_, now) => now.hallC, resistance),
  },
  ...([0, 1] as const).map((rack) => ({
    topic: `residue-1/stack/rack-${rack + 7}`,
    everyS: 30,
    qos: 0 as const,
    payload: plain((p) => p.residue.stackC[rack], thermocouple),
  })),
  {
    topic: 'racks-1/climate',
    everyS: 30,
    qos: 0,
    payload: together({
      t: [(_, now) => fahrenheit(now.hallC), { noise: 0.1, digits: 1 }],
      rh: [(p) => p.rackRoom.humidityPercent, { noise: 0.3, digits: 1 }],
    }),
  },
  {
    topic: 'press-1/mould',
    everyS: 5,
    qos: 0,
    payload: (plant, now, channel) =>
      `{"value":${reading(now, channel, fahrenheit(plant.press.mouldC), { noise: 0.3, digits: 1 })},"unit":"[degF]"}`,
  },
  { topic: 'press-1/closed', everyS: 2, qos: 0, payload: plain((p) => p.press.closed, contact) },
];

const from = (gateway: Gateway, said: readonly Omit<Message, 'gateway'>[]): readonly Message[] =>
  said.map((message) => ({ ...message, gateway, topic: `${line}/${message.topic}` }));

export const messages: readonly Message[] = [
  ...from('gateway-wet', wet),
  ...from('gateway-spray', spray),
  ...from('gateway-heat', heat),
];
