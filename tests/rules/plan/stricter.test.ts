/** What a site file may say of a rule that keeps people from harm: stricter, never weaker. */
import { describe, expect, test } from 'vitest';
import { ruleKinds } from '#rules/kinds/all.ts';
import { settingNames } from '#rules/plan/rule-settings.ts';
import { stricterWays } from '#rules/plan/stricter-ways.ts';
import { stationKinds } from '#rules/stations/all.ts';
import { compiled, signalLine } from './site.ts';

const cel = (topic: string) => signalLine(topic, 'Cel');
const residue = (rules: string) =>
  compiled(
    `l: { r: { kind: residue, material: adhesive-a, signals: { surface: ${cel('s')}, air: ${cel('a')}, bin: ${cel('b')}, bin-air: ${cel('c')} }, rules: ${rules} } }`,
  );
type Site = ReturnType<typeof compiled>;
const said = (site: Site) =>
  site.problems.map(({ path, problem, fix }) => `${path.slice(4).join('.')}: ${problem} | ${fix}`);
const card = (site: Site, rule: string) => site.rules.find(({ id }) => id.endsWith(`/${rule}`))!;

describe('a rule that keeps people from harm is made no weaker', () => {
  test.each([
    ['at-limit', 'on_delay: 10 h', 'on_delay', '10 h is longer than the 5 s'],
    ['at-limit', 'deadband: 100 K', 'deadband', '100 K is more than the 0 K'],
    ['at-limit', 'latching: false', 'latching', 'this alarm stays until it is reset'],
    ['at-limit', 'highly_managed: false', 'highly_managed', 'this alarm is highly managed'],
    [
      'at-limit',
      'self_acknowledging: true',
      'self_acknowledging',
      'this alarm waits for an answer',
    ],
    ['at-limit', 'priority: low', 'priority', 'low is less than the high'],
    ['at-limit', 'respond: 30 d', 'respond', '30 d is longer than the 1 min'],
    ['at-limit', 'inclusive: false', 'inclusive', 'false is weaker than the true'],
    ['at-limit', 'gate: { signal: air, low: 50 Cel }', 'gate', 'judged only now and then'],
    ['self-heating', 'excess: 500 K', 'excess', '500 K is more than the 5 K'],
    ['self-heating', 'rise_per: 1 s', 'rise_per', '1 s is shorter than the 1 min'],
    ['bin-warm', 'high: 90 K', 'high', '90 K is more than the 10 K'],
    ['approaching', 'within: 1 min', 'within', '1 min is shorter than the 30 min'],
    ['cleaning-late', 'limit: 30 d', 'limit', '30 d is longer than the 7 d'],
  ])('%s: { %s }', (rule, words, key, problem) => {
    const found = said(residue(`{ ${rule}: { ${words} } }`));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(`${rule}.${key}: `);
    expect(found[0]).toContain(problem);
    expect(found[0]).toMatch(/\| .*(Write|Take)/);
  });

  test.each([
    ['at-limit', 'on_delay: 1 s, priority: high, respond: 30 s, latching: true'],
    ['self-heating', 'excess: 3 K, on_delay: 30 s'],
    ['bin-warm', 'high: 8 K, deadband: 1 K, gate: none'],
    ['early', 'priority: high, latching: true'],
    ['approaching', 'within: 1 h'],
  ])('%s: { %s } is stricter', (rule, words) => {
    expect(said(residue(`{ ${rule}: { ${words} } }`))).toEqual([]);
  });

  test('as weak as its published exception, and no weaker', () => {
    const booth = (low: string) =>
      compiled(
        `l: { b: { kind: spray-booth, signals: { face-velocity: ${signalLine('v', 'm/s')} }, rules: { exhaust-airflow: { low: ${low} } } } }`,
      );
    expect(said(booth('0.30 m/s'))).toEqual([]);
    expect(said(booth('0.29 m/s'))).toEqual([
      expect.stringContaining('0.29 m/s is less than the 0.30 m/s it may be at the most'),
    ]);
  });

  test('a rule of quality may be made weaker, and that is named', () => {
    const site = compiled(
      `l: { a: { kind: compressed-air, signals: { pdp: ${cel('d')} }, rules: { air-dew-point: { on_delay: 10 h, priority: low } } } }`,
    );
    expect(said(site)).toEqual([]);
    expect(card(site, 'air-dew-point').changes).toEqual([
      { what: 'priority', usual: 'medium', written: 'low' },
      { what: 'on_delay', usual: '10 min', written: '10 h' },
    ]);
  });

  test('which way is stricter is written down for every setting of such a rule', () => {
    const missing = [...stationKinds.values()].flatMap((kind) =>
      kind.rules
        .filter(
          (rule) =>
            rule.class.highlyManaged ||
            kind.hazards.some(({ id, people }) => people && id === rule.hazard),
        )
        .flatMap((rule) =>
          settingNames(ruleKinds.get(rule.kind)!)
            .filter((setting) => stricterWays[rule.kind]?.[setting] === undefined)
            .map((setting) => `${rule.kind} ${setting}`),
        ),
    );
    expect([...new Set(missing)]).toEqual([]);
  });
});

describe('texts of such a rule', () => {
  test.each([
    ['actions: ["Open the oven."]', 'actions.0', '"Open"'],
    ['actions: ["Leave.", "Then look in and scrape it off."]', 'actions.1', '"look in"'],
    ['caution: Stop the conveyor first.', 'caution', '"Stop the conveyor"'],
  ])('{ %s } is refused, and the word named', (words, key, word) => {
    const found = said(residue(`{ at-limit: { ${words} } }`));
    expect(found[0]).toContain(`at-limit.${key}: `);
    expect(found[0]).toContain(word);
  });

  test.each(['at-limit', 'bin-warm'])('the sentence of %s is not replaced', (rule) => {
    const [found, ...others] = said(residue(`{ ${rule}: { sentence: All is well. } }`));
    expect(others).toEqual([]);
    expect(found).toContain(`${rule}.sentence: the sentence of this rule says what is wrong`);
    expect(found).toMatch(/\| .*actions.*caution/);
  });

  test('the sentence of a rule of quality is the site’s to write', () => {
    const site = compiled(
      `l: { a: { kind: compressed-air, signals: { pdp: ${cel('d')} }, rules: { air-dew-point: { sentence: Wet air. } } } }`,
    );
    expect(said(site)).toEqual([]);
    expect(card(site, 'air-dew-point').label.sentence).toBe('Wet air.');
  });

  test('every text of the site’s own is in what it changes, word for word', () => {
    const site = residue(
      '{ at-limit: { actions: ["Ring.", "Wait at gate 2."], do_not: ["run"], caution: Hot steam., consequence: It burns. } }',
    );
    const stays = (text: string) => `of the station, and behind it: ${text}`;
    expect(card(site, 'at-limit').changes.map(({ what, written }) => [what, written])).toEqual([
      ['consequence', stays('It burns.')],
      ['actions', stays('Ring. Wait at gate 2.')],
      ['do_not', stays('run')],
      ['caution', stays('Hot steam.')],
    ]);
  });

  test('steps are added, and what nobody may do stays', () => {
    const site = residue(
      '{ at-limit: { actions: ["Ring the gate house."], do_not: [], caution: Hot steam. } }',
    );
    const plain = card(residue('{}'), 'at-limit').label;
    const { label } = card(site, 'at-limit');
    expect(said(site)).toEqual([]);
    expect(label.steps).toEqual([...plain.steps, 'Ring the gate house.']);
    expect(label.doNot).toEqual(plain.doNot);
    expect(label.caution).toBe(`${plain.caution} Hot steam.`);
    expect(card(site, 'at-limit').changes.map(({ what }) => what)).not.toContain('do_not');
    const more = card(residue('{ at-limit: { do_not: ["run"] } }'), 'at-limit').label;
    expect(more.doNot).toEqual([...plain.doNot, 'run']);
  });

  test('the site’s own rule for people is held to it too', () => {
    const site = compiled(
      `l: { x: { kind: custom, signals: { t: ${cel('t')} }, rules: { hot: { kind: band, signal: t, high: 60 Cel, priority: high, signal_word: WARNING, consequence: Burns., actions: ["Look inside."] } } } }`,
    );
    expect(said(site)[0]).toContain('hot.actions.0: ');
  });
});

describe('switched off', () => {
  test.each([
    ['off: true, reason: no', ['off', 'off']],
    ['off: true, reason: "replaced by the guard system"', ['off']],
    ['off: true, reason: no, signed_by: A. Byrne', ['off']],
  ])('{ %s } is refused', (words, keys) => {
    const site = residue(`{ at-limit: { ${words} } }`);
    expect(site.problems.map(({ path }) => path.at(-1))).toEqual(keys);
  });

  test('with a reason and a name its hazard counts as not watched, and says by whom and why', () => {
    const site = residue(
      '{ at-limit: { off: true, reason: the guard system does it, signed_by: A. Byrne } }',
    );
    expect(said(site)).toEqual([]);
    const [station] = site.coverage.stations;
    expect(station!.off).toEqual([
      {
        rule: 'l/r/at-limit',
        reason: 'the guard system does it',
        signedBy: 'A. Byrne',
        people: true,
      },
    ]);
    expect(station!.watched.map(({ hazard }) => hazard)).not.toContain('ignition');
    const not = station!.unwatched.find(({ hazard }) => hazard === 'ignition');
    expect(not!.why).toMatch(
      /^at-limit is switched off by A\. Byrne: the guard system does it\. Still judged: .*early/,
    );
  });
});

test('every changed default is named, with what stood there', () => {
  const site = residue('{ at-limit: { on_delay: 1 s, high: 100 Cel, actions: ["Ring."] } }');
  expect(card(site, 'at-limit').changes).toEqual([
    {
      what: 'actions',
      usual: 'of the station',
      written: 'of the station, and behind it: Ring.',
    },
    { what: 'on_delay', usual: '5 s', written: '1 s' },
    { what: 'high', usual: '112 Cel', written: '100 Cel' },
  ]);
  expect(card(site, 'early').changes).toEqual([]);
});
