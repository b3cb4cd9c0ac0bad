/**
 * A site for the fault tests: four sensors with a clock of their own, four without, a band on
 * each, probes that become known when they first speak, and an air dryer whose margin is computed.
 */
export const rooms = [1, 2, 3, 4] as const;

const signals = Object.fromEntries(
  rooms.flatMap((n) => [
    [
      `own-${n}`,
      {
        topic: `hall/${n}/own`,
        payload: { kind: 'json', value: '/v', time: '/t' },
        unit: 'Cel',
        resolution: 0.0001,
        expect_every: '1 s',
      },
    ],
    [
      `plain-${n}`,
      {
        topic: `hall/${n}/plain`,
        payload: { kind: 'plain' },
        unit: 'Cel',
        resolution: 0.0001,
        expect_every: '1 s',
      },
    ],
  ]),
);

const band = (signal: string, delay: string) => ({
  kind: 'band',
  signal,
  high: '30 Cel',
  on_delay: delay,
  off_delay: delay,
  deadband: '1 K',
  priority: 'medium',
  consequence: 'The test pieces leave the range they are compared in.',
  actions: ['Shade the bench.'],
});

const rules = Object.fromEntries(
  rooms.flatMap((n) => [
    [`own-${n}-warm`, band(`own-${n}`, n % 2 === 0 ? '0 s' : '100 ms')],
    [`plain-${n}-warm`, band(`plain-${n}`, n % 2 === 0 ? '0 s' : '100 ms')],
  ]),
);

export const smallWorks = {
  site: 'fault-works',
  timezone: 'Europe/Dublin',
  lines: {
    hall: {
      bench: {
        kind: 'custom',
        signals: {
          ...signals,
          probe: {
            topic: 'hall/+/probe',
            names: ['probe'],
            payload: { kind: 'plain' },
            unit: 'Cel',
            resolution: 0.0001,
          },
        },
        rules: { ...rules, 'probe-warm': band('probe', '0 s') },
      },
      'air-1': {
        kind: 'compressed-air',
        signals: {
          pdp: { topic: 'hall/pdp', payload: { kind: 'plain' }, unit: 'Cel' },
          pipe: { topic: 'hall/pipe', payload: { kind: 'plain' }, unit: 'Cel' },
        },
      },
    },
  },
};

/** Every value of a signal is one of its own: its counter is in the last digits. */
export const reading = (count: number): number => {
  const warm = Math.floor(count / 40) % 2 === 1;
  return (warm ? 50 : 10) + count / 10_000;
};

/** A value as the integer that tells it from every other. */
export const keyOf = (value: number): number => Math.round(value * 10_000);
