/** Whoever answers second is told the name of whoever was first, not an id. */
import { expect, test } from 'vitest';
import { acknowledgedBefore } from '#agent/wiring/acknowledged-before.ts';
import { freshFolder } from '#tests/agent/store/folders.ts';
import { Plant, person } from './plant.ts';

test('it says who acknowledged it, and by the id where nobody has that any more', async () => {
  const ann = { ...person('p-1', 'operator'), name: 'Ann Byrne' };
  const plant = new Plant({ folder: freshFolder(), people: [ann] });
  plant.send(0, 40);
  await plant.tick(100);
  const [open] = plant.core.desk.open();
  const { id } = open!;
  await plant.acknowledge(id, 'p-1');
  const known = plant.occurrence(id);
  const command = { verb: 'acknowledge', occurrence: id, by: 'p-2' } as const;
  const said = (by: string): string =>
    acknowledgedBefore(
      plant.core,
      command,
      { ...known, acknowledged: { by, at: plant.nowMs } },
      plant.nowMs,
    );
  expect(said('p-1')).toMatch(/^Ann Byrne acknowledged it already, at /);
  expect(said('p-gone')).toMatch(/^p-gone acknowledged it already, at /);
});
