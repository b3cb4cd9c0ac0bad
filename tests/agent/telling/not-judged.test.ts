/** Whoever was called is not told that an alarm is over where it is only not judged any more. */
import { expect, test } from 'vitest';
import { freshFolder } from '../store/folders.ts';
import { Plant, person } from './plant.ts';

const people = [person('ann', 'maintenance'), { ...person('eva', 'ehs'), language: 'de' as const }];

async function lastSaid(end: (plant: Plant) => void): Promise<Record<string, string>> {
  const plant = new Plant({ folder: freshFolder(), people, gated: [0] });
  plant.send(13, 5);
  await plant.pass(10_000);
  plant.send(0, 35.5);
  await plant.pass(30_000);
  end(plant);
  await plant.pass(30_000);
  const said = plant.phones.sendings.filter(({ message }) => message.kind === 'over');
  return Object.fromEntries(
    said.map(({ target, message }) => [target.person, `${message.title}: ${message.sentence}`]),
  );
}

test('its gate closed', async () => {
  const { ann, eva } = await lastSaid((plant) => plant.send(13, 0));
  expect(ann).toMatch(/^Not judged · S: Not judged since \d\d:\d\d, which is no all-clear: /);
  expect(eva).toMatch(/^Nicht beurteilt · S: Seit \d\d:\d\d nicht beurteilt, keine Entwarnung: /);
});

test('its value went back', async () => {
  const { ann, eva } = await lastSaid((plant) => plant.send(0, 20));
  expect(ann).toMatch(/^Over · S: Over at /);
  expect(eva).toMatch(/^Vorbei · S: Vorbei um /);
});
