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

test('its silence may be noticed sooner, not later, and it is not switched off without a name', () => {
  const said = (words: string) =>
    compiled(
      `l: { r: { kind: residue, material: adhesive-a, signals: { surface: ${topic('s', 'Cel')} }, rules: { lost-surface: { ${words} } } } }`,
    ).problems.map(({ path }) => path.at(-1));
  expect(said('after: 20 s')).toEqual([]);
  expect(said('after: 10 h')).toEqual(['after']);
  expect(said('off: true, reason: it is quite noisy')).toEqual(['off']);
});
