/** What the gateway of store, mixer, preparation and dip tank publishes. */
import {
  contact,
  type Draft,
  plain,
  resistance,
  thermocouple,
  timed,
  together,
} from './message.ts';
import { fahrenheit, psi } from './sensor.ts';

export const wet: readonly Draft[] = [
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
    topic: 'store-1/outside',
    everyS: 60,
    qos: 0,
    payload: plain((_, now) => now.outsideC, thermocouple),
  },
  {
    topic: 'mixer-1/state',
    everyS: 5,
    qos: 0,
    payload: together({
      rpm: [(p) => p.drum.perMin, { noise: 0.1, digits: 1, least: 0 }],
      in_use: [(p) => p.drum.inUse, contact],
      level: [(p) => p.drum.levelMm, { noise: 0.4, digits: 0 }],
      feed: [(p) => p.drum.feeding, contact],
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
    everyS: 15,
    qos: 0,
    payload: together({
      psi: [(p) => psi(Math.min(5.6, p.air.headerBar - 0.5)), { noise: 0.2, digits: 1 }],
      on: [() => 1, contact],
    }),
  },
  {
    topic: 'prep-1/climate',
    everyS: 30,
    qos: 0,
    payload: together({
      t: [(_, now) => now.hallC, { noise: 0.1, digits: 1 }],
      rh: [(_, now) => now.hallRhPercent, { noise: 0.3, digits: 1 }],
      metal: [(p, now) => now.hallC + p.steady.of('preparedMetalK'), thermocouple],
    }),
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
