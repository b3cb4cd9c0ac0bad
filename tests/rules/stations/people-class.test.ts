/** What can hurt people is highly managed, and so are the sensors that watch for it. */
import { expect, test } from 'vitest';
import { stationKinds } from '#rules/stations/all.ts';
import { compiled } from '../plan/site.ts';

const people = [...stationKinds.values()].flatMap((kind) =>
  kind.rules
    .filter(({ hazard }) => kind.hazards.some((each) => each.people && each.id === hazard))
    .map((rule) => [`${kind.name} ${rule.name}`, rule] as const),
);

test.each(people)('%s', (_, rule) => {
  expect(rule.class.highlyManaged).toBe(true);
});

const topic = (name: string, unit: string) =>
  `{ topic: ${name}, payload: { kind: plain }, unit: "${unit}", expect_every: 10 s }`;

test('a sensor that people’s safety leans on ranks with it, at most one step below', () => {
  const site = compiled(
    `l: { r: { kind: residue, material: adhesive-a, signals: { surface: ${topic('s', 'Cel')}, air: ${topic('a', 'Cel')} } }, a: { kind: compressed-air, signals: { pdp: ${topic('d', 'Cel')} } } }`,
  );
  const rule = (id: string) => site.rules.find((each) => each.id === id)!;
  expect(rule('l/r/lost-surface')).toMatchObject({
    class: { highlyManaged: true },
    hazardToPeople: true,
    priority: ['medium', 'medium'],
  });
  expect(rule('l/a/lost-pdp')).toMatchObject({
    class: { highlyManaged: false },
    hazardToPeople: false,
  });
});

const residue = (signals: string) =>
  compiled(`l: { r: { kind: residue, material: adhesive-a, signals: { ${signals} } } }`);
const label = (site: ReturnType<typeof compiled>, id: string) =>
  site.rules.find((each) => each.id === id)!.label;

test.each(['lost', 'stuck'])('%s: a word for people where it leaves them unwatched', (health) => {
  const alone = residue(`surface: ${topic('s', 'Cel')}`);
  expect(label(alone, `l/r/${health}-surface`).word).toBe('WARNING');
  const { steps, doNot, caution } = label(alone, `l/r/${health}-surface`);
  expect(steps[0]).toMatch(/^Keep everyone clear/);
  expect(steps.join(' ')).toMatch(/EHS and maintenance/);
  expect([...steps, caution].join(' ')).not.toMatch(/by hand|hand instrument/);
  expect(doNot).toContain('go near to read it by hand');
});

test('CAUTION where another sensor still watches for the same hazard; of many places each is alone', () => {
  const own = (rules: string) =>
    compiled(
      `l: { x: { kind: custom, signals: { t: ${topic('t', 'Cel')}, u: ${topic('u', 'Cel')} }, rules: { ${rules} } } }`,
    );
  const hot = (name: string, signal: string, word: string) =>
    `${name}: { kind: band, signal: ${signal}, high: 60 Cel, priority: high, signal_word: ${word}, consequence: Burns., actions: ["Keep clear."] }`;
  const one = own(hot('hot', 't', 'DANGER'));
  expect(label(one, 'l/x/lost-t').word).toBe('WARNING');
  expect(label(one, 'l/x/lost-u').word).toBe('NOTICE');
  expect(label(own(hot('hot', 't', 'CAUTION')), 'l/x/lost-t').word).toBe('CAUTION');
  const oven = (signals: string, name: string) =>
    label(
      compiled(
        `l: { o: { kind: drying-oven, signals: { ${signals} }, rules: { exhaust-weak: { target: 80 Pa } } } }`,
      ),
      `l/o/lost-${name}`,
    );
  const [proof, dp] = [`exhaust-proof: ${topic('p', '1')}`, `exhaust-dp: ${topic('d', 'Pa')}`];
  expect(oven(dp, 'exhaust-dp').word).toBe('WARNING');
  expect(oven(`${proof}, ${dp}`, 'exhaust-proof').word).toBe('CAUTION');
  // A bin and a stack of racks are one hazard by name, and two things that can burn.
  const bin = `bin: ${topic('b', 'Cel')}, bin-air: ${topic('c', 'Cel')}`;
  const waste = residue(`${bin}, stack: ${topic('k', 'Cel')}`);
  for (const name of ['bin', 'bin-air', 'stack'])
    expect(label(waste, `l/r/lost-${name}`).word).toBe('WARNING');
});

test('its silence may be noticed sooner, not later, and it is not switched off without a name', () => {
  const said = (words: string) =>
    compiled(
      `l: { r: { kind: residue, material: adhesive-a, signals: { surface: ${topic('s', 'Cel')} }, rules: { lost-surface: { ${words} } } } }`,
    ).problems.map(({ path }) => path.at(-1));
  expect(said('after: 20 s')).toEqual([]);
  expect(said('after: 10 h')).toEqual(['after']);
  expect(said('off: true, reason: it is quite noisy')).toEqual(['off']);
});
