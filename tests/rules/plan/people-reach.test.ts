/** A sensor that people’s safety leans on must be able to read past the limits it is judged by. */
import { describe, expect, test } from 'vitest';
import { compiled } from './site.ts';

const line = (topic: string, unit: string, more = '') =>
  `{ topic: ${topic}, payload: { kind: plain }, unit: "${unit}"${more} }`;
const station = (kind: string, signals: string, rules = '{}') =>
  compiled(
    `l: { r: { kind: ${kind}, material: adhesive-a, signals: { ${signals} }, rules: ${rules} } }`,
  );
const surface = (more: string, unit = 'Cel', rules = '{}') =>
  station('residue', `surface: ${line('s', unit, more)}`, rules);
const said = ({ problems }: ReturnType<typeof compiled>) =>
  problems.map(({ path, problem, fix }) => `${path.slice(4).join('.')}: ${problem} | ${fix}`);

describe('the range of a sensor that people’s safety leans on', () => {
  test.each(['90', '100', '112', '131'])('up to %s Cel is refused', (high) => {
    const found = said(surface(`, range: ["0 Cel", "${high} Cel"]`));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(`surface.range.1: `);
    expect(found[0]).toContain('at-limit');
    expect(found[0]).toContain('112 Cel');
    expect(found[0]).toContain('at least 20 K past it');
    expect(found[0]).toContain('no sensor for this hazard');
    expect(found[0]).toContain('our judgement');
  });

  test('20 K past the highest limit it is taken', () => {
    expect(said(surface(', range: ["0 Cel", "132 Cel"]'))).toEqual([]);
    expect(said(surface(', range: ["32 [degF]", "300 [degF]"]', '[degF]'))).toEqual([]);
    expect(said(surface(', range: ["32 [degF]", "194 [degF]"]', '[degF]'))).toHaveLength(1);
  });

  test('the limit is the one that holds here, not the usual one', () => {
    const rules =
      '{ at-limit: { high: 60 Cel }, approaching: { high: 60 Cel }, act: { high: 55 Cel }, early: { high: 50 Cel } }';
    const found = said(surface(', range: ["0 Cel", "90 Cel"]', 'Cel', rules));
    expect(found).toEqual([]);
  });

  test('of a place with a + too, before any place is heard', () => {
    const found = said(
      station(
        'residue',
        `surface: ${line('s/+', 'Cel', ', names: [place], range: ["0 Cel", "90 Cel"]')}`,
      ),
    );
    expect(found).toHaveLength(1);
  });

  test('a lower limit is reached from above', () => {
    const booth = (range: string) =>
      said(station('spray-booth', `face-velocity: ${line('v', 'm/s', `, range: ${range}`)}`));
    expect(booth('["0 m/s", "5 m/s"]')).toEqual([]);
    const found = booth('["0.6 m/s", "5 m/s"]');
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('face-velocity.range.0: ');
  });

  test('a rule that judges what is worked out in the same quantity counts', () => {
    const own = `l: { x: { kind: custom, signals: { t: ${line('t', 'Cel', ', range: ["0 Cel", "60 Cel"]')} }, derived: { mean: { kind: moving-average, inputs: { signal: t }, span: 10 min } }, rules: { hot: { kind: band, signal: mean, high: 60 Cel, priority: high, signal_word: WARNING, consequence: Burns., actions: ["Keep clear."] } } } }`;
    const found = said(compiled(own));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('t.range.1: ');
  });

  test('quality alone may be cut short', () => {
    expect(
      said(
        station('compressed-air', `pdp: ${line('d', 'Cel', ', range: ["-80 Cel", "-60 Cel"]')}`),
      ),
    ).toEqual([]);
  });

  test('the ends of a current loop are its range', () => {
    const loop = (full: string) =>
      said(surface(`, sensor: { kind: current-loop, from: 0 Cel, to: ${full} }`, 'mA'));
    expect(loop('150 Cel')).toEqual([]);
    const found = loop('100 Cel');
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('surface.sensor: ');
  });
});

describe('its calibration', () => {
  test('may move the reading a little', () => {
    expect(said(surface(', calibration: [[20.0, 20.4], [110.0, 108.0]]'))).toEqual([]);
    expect(said(surface(', calibration: [[0.0, 0.0], [100.0, 50.0]]'))).toEqual([]);
  });
  test.each(['[[0.0, 0.0], [50.0, 130.0]]', '[[20.0, 60.0], [60.0, 100.0]]'])(
    '%s hides the limit',
    (calibration) => {
      const found = said(surface(`, calibration: ${calibration}`));
      expect(found).toHaveLength(1);
      expect(found[0]).toContain('surface.calibration: ');
      expect(found[0]).toContain('112 Cel');
      expect(found[0]).toMatch(/\| .*another sensor/);
    },
  );
});

test('what is changed of such a signal is listed', () => {
  const site = surface(
    ', range: ["0 Cel", "200 Cel"], calibration: [[20.0, 20.4], [110.0, 109.0]]',
  );
  expect(site.changedSignals).toEqual([
    {
      signal: 'l/r/surface',
      what: 'range',
      usual: '-20 Cel to 400 Cel',
      written: '0 Cel to 200 Cel',
    },
    {
      signal: 'l/r/surface',
      what: 'calibration',
      usual: 'none',
      written: 'true 20 read as 20.4, true 110 read as 109',
    },
  ]);
  const quality = station(
    'compressed-air',
    `pdp: ${line('d', 'Cel', ', range: ["-80 Cel", "20 Cel"]')}`,
  );
  expect(quality.changedSignals).toEqual([]);
});

describe('how soon it is judged', () => {
  const timed = (more: string) =>
    station(
      'residue',
      `surface: { topic: s, payload: { kind: json, value: /v, time: /t }, unit: Cel${more} }`,
    );
  test.each([
    [', hold: 3 min', 'surface.hold: ', '3 min late'],
    [', hold: 5 h, lateness: 6 h', 'surface.hold: ', '5 h late'],
    [', lateness: 30 s', 'surface.lateness: ', '30 s late'],
  ])('%s is refused', (more, place, words) => {
    const found = said(timed(more));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(place);
    expect(found[0]).toContain(words);
    expect(found[0]).toContain('our judgement');
  });

  test('what makes it slower than usual is listed', () => {
    const site = timed(', hold: 8 s, lateness: 2 min, expect_every: 6 min');
    // So seldom a reading, its forecast asks for a longer window.
    expect(said(site).filter((each) => each.includes('surface'))).toEqual([]);
    expect(site.changedSignals.map(({ what, usual, written }) => [what, usual, written])).toEqual([
      ['hold', '2 s', '8 s'],
      ['lateness', '10 min', '2 min'],
      ['expect_every', 'at most 5 min', '6 min'],
    ]);
  });

  test('a reading by hand comes when somebody takes it', () => {
    const hand = station('residue', 'thickness: { by_hand: true, unit: mm, due_every: 8 h }');
    expect(said(hand).filter((each) => each.includes('thickness'))).toEqual([]);
    expect(hand.changedSignals).toEqual([]);
  });

  test('quality alone may wait', () => {
    const pdp = `pdp: { topic: d, payload: { kind: json, value: /v, time: /t }, unit: Cel, hold: 3 min }`;
    const site = station('compressed-air', pdp);
    expect(said(site)).toEqual([]);
    expect(site.changedSignals).toEqual([]);
  });
});

test('what is changed of a rule over a wildcard is listed before any place is heard', () => {
  const site = station(
    'residue',
    `surface: ${line('s/+', 'Cel', ', names: [place]')}`,
    '{ at-limit: { high: 100 Cel, actions: ["Call 5555."] } }',
  );
  expect(site.rules.filter(({ id }) => id.includes('at-limit'))).toEqual([]);
  expect(site.changedWaiting.map(({ id }) => id)).toEqual(['l/r/at-limit']);
  expect(site.changedWaiting[0]!.changes.map(({ what }) => what)).toContain('high');
  expect(JSON.stringify(site.changedWaiting)).toContain('Call 5555.');
});
