/** Where a site names ways or people and nobody can be reached, health says so, and how to mend it. */
import { expect, test } from 'vitest';
import { tellingNote } from '#agent/wiring/telling-health.ts';
import { freshFolder } from '#tests/agent/store/folders.ts';
import { Plant, type PlantOptions, person } from './plant.ts';

const email = { server: 'mail.plant.example', from: 'alarms@plant.example' };
const noWay = { email: null, push: false };
const boss = person('boss', 'administrator', noWay);
const anna = person('anna', 'engineer');

const noteOf = (more: Omit<PlantOptions, 'folder'>): string | null =>
  tellingNote(new Plant({ folder: freshFolder(), ...more }).core);

test('a first administrator without phone and address: nobody can be told', () => {
  expect(noteOf({ people: [boss], telling: { email } })).toBe(
    'Nobody can be told: no person has a phone or an e-mail address. Switch push on under Look back, My phone, or enter an address there.',
  );
});

test('a rota alone, and no people at all, tells nobody either', () => {
  expect(noteOf({ people: [], telling: { rota: [{ who: ['anna'] }] } })).toMatch(
    /^Nobody can be told: /,
  );
});

test('a program at the other end, or one person who can be reached, is somebody', () => {
  const webhooks = { board: { url: 'https://board.plant.example/hook' } };
  expect(noteOf({ people: [boss], telling: { email, webhooks } })).toBeNull();
  expect(noteOf({ people: [boss, anna], telling: { email } })).toBeNull();
});

test('a site that names no way of telling and no people is not asked for any', () => {
  expect(noteOf({ people: [] })).toBeNull();
});

test('people who have neither phone nor address are told of, whatever the site names', () => {
  expect(noteOf({ people: [boss] })).toMatch(/^Nobody can be told: /);
  expect(noteOf({ people: [boss, anna] })).toBeNull();
});

test('a rota that has nobody now for what is highly managed is told; for the rest it is not', () => {
  const rota = [{ who: ['anna'], from: '22:00', to: '23:00' }];
  expect(noteOf({ people: [anna], telling: { rota }, managed: [0, 2] })).toBe(
    'The rota has nobody on call now for 2 highly managed alarms, l/s/r0 among them; everyone who wants alarms is told. Mend telling: rota: in the site file.',
  );
  expect(noteOf({ people: [anna], telling: { rota } })).toBeNull();
});
