/**
 * A site with a signal of every kind: with a time of its own and stamped on arrival, wildcards of
 * both, one derived, one that gates a rule. Small delays, so that seconds of traffic raise alarms.
 */
const own = (topic: string, more: object = {}) => ({
  topic,
  payload: { kind: 'json', value: '/v', time: '/t' },
  unit: 'Cel',
  resolution: 0.1,
  ...more,
});
const plain = (topic: string, more: object = {}) => ({
  topic,
  payload: { kind: 'plain' },
  unit: 'Cel',
  resolution: 0.1,
  ...more,
});
const warm = (signal: string, more: object = {}) => ({
  kind: 'band',
  signal,
  high: '25 Cel',
  high_high: '30 Cel',
  deadband: '1 K',
  on_delay: '1 s',
  priority: 'low',
  consequence: 'The bench is warm.',
  actions: ['Look at the bench.'],
  ...more,
});

// Wildcards stand before, between and behind the fixed signals in the order of names.
const written = {
  site: 'works',
  timezone: 'Europe/Dublin',
  lines: {
    a: {
      bench: {
        kind: 'custom',
        signals: { t: plain('bench/+/t', { names: ['cell'], expect_every: '5 s' }) },
        rules: { warm: warm('t', { on_delay: '0 s' }) },
      },
    },
    m: {
      room: {
        kind: 'custom',
        signals: {
          air: plain('room/air', { expect_every: '10 s', max_rate: { change: '5 K', per: '1 s' } }),
          humidity: { ...plain('room/humidity'), unit: '%', resolution: 1 },
          run: { ...plain('room/run'), unit: '1', resolution: 1 },
          wall: own('room/wall', { expect_every: '10 s' }),
          zone: own('zone/+/t', { names: ['zone'], hold: '300 ms' }),
        },
        derived: {
          dew: { kind: 'dew-point', inputs: { temperature: 'air', humidity: 'humidity' } },
        },
        rules: {
          'air-warm': warm('air', { gate: { signal: 'run', low: '0.5 1' } }),
          'damp-air': warm('dew', { high: '18 Cel', high_high: '22 Cel', latching: true }),
          'wall-warm': warm('wall', { hold: { what: 'container', item: 'drum-1' } }),
          'zone-warm': warm('zone'),
          'wall-soon': {
            ...warm('wall'),
            kind: 'approach',
            high: '27 Cel',
            high_high: undefined,
            deadband: undefined,
            on_delay: undefined,
            within: '1 h',
          },
        },
      },
    },
  },
};

/** As plain data: settings that are undefined above are not there. */
export const worksSite: object = JSON.parse(JSON.stringify(written));
