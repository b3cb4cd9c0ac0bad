import type { Scenario } from '../scenario.ts';

const cel = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: Cel }`;
const hour = 60;
const day = 24 * hour;
/** Every ten minutes will do for a store. */
const slowlyS = 600;

export const adhesiveStore: Scenario = {
  kind: 'adhesive-store',
  sheet: {
    storage_low: '5 Cel',
    storage_high: '35 Cel',
    shelf_life: '90 d',
    opened_life: '14 d',
    let_down_life: '5 d',
  },
  station: `
    material: adhesive-a
    signals:
      wall: ${cel('w')}
      bottom: ${cel('b')}
      air: ${cel('a')}
      outside: ${cel('o')}
      probe-wall: { by_hand: true, unit: Cel }
      seen-frozen: { by_hand: true, unit: "1" }
      freight-low: { by_hand: true, unit: Cel }
      freight-high: { by_hand: true, unit: Cel }
      way-coldest: { by_hand: true, unit: Cel }
      way-time: { by_hand: true, unit: h }`,
  stories: [
    {
      title:
        'The heating fails at night. Drums C-1 and C-2 stand at the wall; C-3 had left, C-4 is brought in later.',
      tell: (line) => {
        line.mark(0, 'put-away', 'C-1').mark(1, 'put-away', 'C-2').mark(2, 'put-away', 'C-3');
        line.mark(3, 'taken', 'C-3');
        line.run(10, 8 * hour, { wall: (m) => 10.5 - m / 45 }, 60);
        line.mark(8 * hour, 'put-away', 'C-4');
        line.run(8 * hour, 9 * hour, { wall: 0.2 }, 60).run(9 * hour, 10 * hour, { wall: 12 }, 60);
      },
    },
    {
      title:
        'On the floor it freezes although the wall does not; nobody has named what stands there.',
      tell: (line) => {
        line.run(0, hour, { bottom: 6.5 }, 60).run(hour, 2 * hour, { bottom: 0.8 }, 60);
        line.run(2 * hour, 3 * hour, { bottom: 9 }, 60);
      },
    },
    {
      title: 'Three drums are measured at their wall: C-11 is well, C-12 cold, C-13 has frozen.',
      tell: (line) => {
        line.mark(0, 'checked', 'C-11').run(1, 1.1, { 'probe-wall': 14 });
        line.mark(5, 'checked', 'C-12').run(6, 6.1, { 'probe-wall': 4.5 });
        line.mark(10, 'checked', 'C-13').run(11, 11.1, { 'probe-wall': 0.6 });
        line.mark(15, 'checked', 'C-14').run(16, 16.1, { 'probe-wall': 12 });
      },
    },
    {
      title: 'Grains are seen at the wall of C-21, none in C-22.',
      tell: (line) => {
        line.mark(0, 'checked', 'C-21').run(1, 1.1, { 'seen-frozen': 1 });
        line.mark(5, 'checked', 'C-22').run(6, 6.1, { 'seen-frozen': 0 });
      },
    },
    {
      title: 'A hot week, and a hotter day.',
      tell: (line) => {
        line.run(0, 4 * hour, { air: 32 }, slowlyS).run(4 * hour, 8 * hour, { air: 36.5 }, slowlyS);
        line.run(8 * hour, 10 * hour, { air: 24 }, slowlyS);
      },
    },
    {
      title: 'Two drums come off the lorry; their logger shows 2 °C, and 43 °C another time.',
      tell: (line) => {
        line.mark(0, 'received', 'C-31').mark(1, 'received', 'C-32');
        line.run(5, 5.1, { 'freight-low': 2, 'freight-high': 19 });
        line.mark(20, 'put-away', 'C-31').mark(21, 'put-away', 'C-32');
        line.mark(day, 'received', 'C-33');
        line.run(day + 5, day + 5.1, { 'freight-low': 14, 'freight-high': 43 });
        line.mark(day + 20, 'put-away', 'C-33');
      },
    },
    {
      title:
        'In winter C-41 and C-42 come with one logger; only that of C-41 is read. In July nobody asks.',
      tell: (line) => {
        line.run(0, hour, { outside: -2 }, slowlyS);
        line.mark(hour, 'received', 'C-41').mark(hour + 5, 'received', 'C-42');
        line.mark(hour + 30, 'logger-read', 'C-41');
        line.run(hour, 6 * hour, { outside: -3 }, slowlyS);
        line.mark(6 * hour, 'logger-read', 'C-42');
        line.run(6 * hour, 16 * day, { outside: (m) => 22 + (m % 120) / 60 }, 3_600);
        line.mark(16 * day, 'received', 'C-43').waitTo(16.5 * day);
      },
    },
    {
      title:
        'Nobody measures outside; the site says that frost comes from October to April. In January C-44 comes without a logger.',
      station: `
        material: adhesive-a
        signals: { wall: ${cel('w')} }
        rules:
          freight-unlogged-season: { season_from: "10-15", season_until: "04-15" }`,
      tell: (line) => {
        line.mark(hour, 'received', 'C-44').waitTo(3.5 * hour);
        line.mark(3.5 * hour, 'logger-read', 'C-44').waitTo(4 * hour);
      },
    },
    {
      title:
        'The buyer plans a delivery for Friday: -10 °C is forecast, and 60 h with the weekend. Then for Monday.',
      tell: (line) => {
        line.run(0, 0.1, { 'way-coldest': -10, 'way-time': 60 * 3_600 });
        line.run(30, 30.1, { 'way-coldest': 4, 'way-time': 10 * 3_600 }).waitTo(31);
      },
    },
    {
      title: 'C-51, made nine weeks ago, waits for another four, and is used up the day after.',
      tell: (line) => {
        line.mark(0, 'manufactured', 'C-51', -59 * day).waitTo(32 * day);
        line.mark(32 * day, 'used-up', 'C-51');
      },
    },
    {
      title: 'C-61 is in use for three weeks, and its let-down rest for one.',
      tell: (line) => {
        line
          .mark(0, 'opened', 'C-61')
          .mark(14 * day, 'let-down', 'C-62')
          .waitTo(21 * day);
        line.mark(21 * day, 'used-up', 'C-61').mark(21 * day, 'used-up', 'C-62');
      },
    },
  ],
};
