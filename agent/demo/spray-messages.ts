/** What the gateway of booth and compressed air publishes. */
import { contact, type Draft, plain, thermocouple, together } from './message.ts';
import { psi, reading } from './sensor.ts';

export const spray: readonly Draft[] = [
  {
    topic: 'booth-1/exhaust',
    everyS: 2,
    qos: 1,
    payload: together({
      velocity: [(p) => p.booth.faceMPerS, { noise: 0.006, digits: 2, least: 0 }],
      dp: [(p) => p.booth.filterPa, { noise: 1, digits: 0 }],
      fan: [(p) => (p.booth.faceMPerS > 0.25 ? 1 : 0), contact],
    }),
  },
  {
    topic: 'booth-1/gun',
    everyS: 2,
    qos: 0,
    payload: together({
      spraying: [(p) => p.booth.spraying, contact],
      trigger: [(p) => p.booth.trigger, contact],
      pot_psi: [(p) => psi(p.booth.potBar), { noise: 0.05, digits: 1 }],
      atomising: [(p) => p.booth.atomisingBar, { noise: 0.01, digits: 2 }],
      part: [(p) => p.steady.of('partAtGunC'), { noise: 0.3, digits: 1 }],
    }),
  },
  {
    topic: 'booth-1/pot',
    everyS: 15,
    qos: 0,
    payload: together({
      on: [(p) => p.booth.spraying, contact],
      filled: [() => 1, contact],
      level: [(p) => p.steady.of('potLevelMm'), { noise: 0.5, digits: 0 }],
      rpm: [(p) => p.steady.of('paddlePerMin'), { noise: 0.1, digits: 1, least: 0 }],
    }),
  },
  {
    topic: 'booth-1/climate',
    everyS: 30,
    qos: 0,
    payload: together({
      t: [(p, now) => now.hallC + p.steady.of('boothAirK'), { noise: 0.1, digits: 1 }],
      rh: [
        (p, now) => now.hallRhPercent + p.steady.of('boothDampPercent'),
        { noise: 0.3, digits: 1 },
      ],
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
