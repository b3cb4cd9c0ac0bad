/** What the gateway of ovens, residue, racks and press publishes. */
import {
  contact,
  type Draft,
  plain,
  resistance,
  thermocouple,
  timed,
  together,
  type Value,
} from './message.ts';
import type { Moment } from './moment.ts';
import type { Plant } from './plant.ts';
import { fahrenheit, reading } from './sensor.ts';

export const heat: readonly Draft[] = [
  {
    topic: 'prebake-1/state',
    everyS: 15,
    qos: 1,
    payload: together({
      metal: [(p) => p.preBake.rack.metalC, thermocouple],
      loaded: [(p) => p.preBake.loaded, contact],
      z1: [(p) => p.preBake.zoneC[0], thermocouple],
      z2: [(p) => p.preBake.zoneC[1], thermocouple],
    }),
  },
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
      metal: [(_, now) => fahrenheit(now.hallC - 2), { noise: 0.1, digits: 1 }],
    }),
  },
  {
    topic: 'racks-1/room',
    everyS: 30,
    qos: 0,
    payload: together({
      t: [(_, now) => now.hallC, { noise: 0.1, digits: 1 }],
      rh: [(_, now) => now.hallRhPercent, { noise: 0.3, digits: 1 }],
    }),
  },
  ...(
    [
      ['cavity-1', (p) => p.press.mouldC],
      ['cavity-2', (p) => p.press.mouldC + p.steady.of('cavityApartK')],
    ] as readonly (readonly [string, Value])[]
  ).map(([cavity, value]) => ({
    topic: `press-1/${cavity}`,
    everyS: 5,
    qos: 0 as const,
    payload: (plant: Plant, now: Moment, channel: number): string =>
      `{"value":${reading(now, channel, fahrenheit(value(plant, now)), { noise: 0.3, digits: 1 })},"unit":"[degF]"}`,
  })),
  {
    topic: 'press-1/state',
    everyS: 2,
    qos: 0,
    payload: together({
      producing: [() => 1, contact],
      inserts: [(p) => p.press.insertIn, contact],
      closed: [(p) => p.press.closed, contact],
      mpa: [(p) => p.press.closed * p.steady.of('pressMPa'), { noise: 0.03, digits: 2 }],
    }),
  },
];
