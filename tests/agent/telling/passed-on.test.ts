/** Whoever passes an alarm on is told who is asked now, or that it is nobody. */
import { expect, test } from 'vitest';
import type { AlarmAnswer } from '#agent/web/ports.ts';
import { commandAlarm } from '#agent/wiring/command-alarm.ts';
import { freshFolder } from '#tests/agent/store/folders.ts';
import { Plant, type PlantOptions, person } from './plant.ts';

const noWay = { email: null, push: false };
const rota = [{ who: ['anna'] }, { who: ['ben'] }];
const [anna, ben, cara] = [
  person('anna', 'operator'),
  person('ben', 'operator'),
  person('cara', 'engineer'),
];

/** Raised by the sensor, told to the first, passed on by them; what they hear, and who was told. */
async function passedOn(options: Omit<PlantOptions, 'folder'>, sensor = 0) {
  const plant = new Plant({ folder: freshFolder(), ...options });
  await plant.pass(10_000);
  plant.send(sensor, 31);
  await plant.pass(1_000, 100);
  const [open] = plant.core.desk.open();
  const before = plant.phones.sendings.length;
  const answer = commandAlarm(
    plant.core,
    { verb: 'pass-on', occurrence: open!.id, by: 'anna' },
    (id) => plant.core.desk.occurrence(id),
    () => plant.nowMs,
  );
  await plant.pass(1_000, 100);
  const told = plant.phones.sendings.slice(before).map((each) => each.target.person);
  return { answer: (await answer) as Extract<AlarmAnswer, { outcome: 'accepted' }>, told };
}

test('the next on the rota is named, and told', async () => {
  const { answer, told } = await passedOn({ people: [anna, ben, cara], telling: { rota } });
  expect(answer).toMatchObject({
    note: `Asked now: ${told.join(', ')}.`,
    asked: { people: told, canBeTold: true },
  });
  expect(told.length).toBeGreaterThan(0);
  expect(told).not.toContain('anna');
});

test.each<[string, Omit<PlantOptions, 'folder'>]>([
  ['nobody at all', { people: [] }],
  [
    'nobody with a phone or an address',
    { people: [person('ben', 'operator', noWay)], telling: { rota } },
  ],
  ['nobody but who cannot take it', { people: [anna] }],
])('%s: somebody must be fetched', async (_, options) => {
  const { answer } = await passedOn(options);
  expect(answer.asked).toEqual({ people: [], canBeTold: false });
  expect(answer.note).toBe('Nobody can be told. Go and fetch somebody.');
});

test('what waits for the end of quiet hours asks nobody now, and says so', async () => {
  const quiet_hours = { from: '00:00', to: '23:59' };
  const { answer, told } = await passedOn({ people: [anna, ben], telling: { quiet_hours } }, 3);
  expect(told).toEqual([]);
  expect(answer.asked).toEqual({ people: [], canBeTold: true });
  expect(answer.note).toBe('Nobody else is told of it now. Go and fetch somebody.');
});
