/** What a phone or a mailbox is told names places as people do. */
import { expect, test } from 'vitest';
import type { Compiled } from '#agent/wiring/plan-book.ts';
import { withSpokenIds } from '#agent/wiring/spoken-ids.ts';
import { plain } from '#agent/wiring/telling-message.ts';
import { freshFolder } from '#tests/agent/store/folders.ts';
import { Plant, person } from './plant.ts';

test('an alarm on a phone has no raw ids in its words', async () => {
  const plant = new Plant({ folder: freshFolder(), people: [person('anna', 'operator')] });
  await plant.pass(10_000);
  plant.send(0, 31);
  await plant.pass(1_000, 100);
  const [sent] = plant.phones.sendings;
  const { title, sentence, steps, doNot, caution, consequence } = sent!.message;
  for (const text of [title, sentence, caution, consequence, ...steps, ...doNot])
    expect(text).not.toMatch(/l\/s/);
  expect(sentence).toContain('S t0');
  expect(sent!.message.station).toBe('l/s');
});

test('of several lines each is named', () => {
  const station = (name: string) => ({ id: `${name}/oven-1/zone-1-air` });
  const compiled = { plan: { signals: [station('bushings-1'), station('mounts-2')] }, rules: [] };
  const { core } = new Plant({ folder: freshFolder(), people: [] });
  const said = {
    ...plain(core, 0, 'en'),
    sentence: 'bushings-1/oven-1/zone-1-air at 3, mounts-2/oven-1.',
  };
  expect(withSpokenIds(said, compiled as unknown as Compiled).sentence).toBe(
    'Bushings 1, oven 1 zone 1 air at 3, Mounts 2, oven 1.',
  );
});

test('ids of the site alone: other texts with strokes stay', () => {
  const { core } = new Plant({ folder: freshFolder(), people: [] });
  const said = {
    ...plain(core, 0, 'en'),
    sentence: 'l/s/t1 and l/s, 2/5/7, x/y/z, kg/m3, http://l/s/t1',
    steps: ['See l/s/r2.'],
  };
  const { sentence, steps } = withSpokenIds(said, core.plans.now);
  expect(sentence).toBe('S t1 and S, 2/5/7, x/y/z, kg/m3, http://l/s/t1');
  expect(steps).toEqual(['See S r2.']);
});
