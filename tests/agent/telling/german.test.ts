/** Each person is told in the language they read; what the site wrote stays as it wrote it. */
import { expect, test } from 'vitest';
import { deferralInGerman } from '#rules/german/deferral.ts';
import { freshFolder } from '../store/folders.ts';
import { monday, Plant, person } from './plant.ts';

const min = 60_000;
const anna = { ...person('anna', 'maintenance'), language: 'de' } as const;
const ben = person('ben', 'maintenance');
const told = (agent: Plant, who: string) =>
  agent.phones.sendings
    .filter(({ target }) => target.person === who)
    .map(({ message: { kind, title, sentence, limitText } }) => ({
      ...{ kind, title, sentence, limitText },
    }));

test('an alarm, its repeat and its end, beside a person who reads English', async () => {
  const agent = new Plant({
    folder: freshFolder(),
    people: [anna, ben, person('carl', 'maintenance')],
    telling: { rota: [{ who: ['anna', 'ben'] }] },
  });
  agent.send(0, 35.5);
  await agent.pass(11 * min);
  agent.send(0, 20);
  await agent.pass(min);
  const german = told(agent, 'anna');
  expect(german.map(({ title }) => title)).toEqual(['HINWEIS · S', 'HINWEIS · S', 'Vorbei · S']);
  expect(german[0]).toMatchObject({
    sentence: 'S t0: 35,50 °C, über 30,00 °C.',
    limitText: 'oberer Grenzwert 30,00 °C',
  });
  expect(german[1]!.sentence).toBe('Noch immer nicht beantwortet: S t0: 35,50 °C, über 30,00 °C.');
  expect(german[2]!.sentence).toMatch(/^Vorbei um \d\d:\d\d: S t0: /);
  const english = told(agent, 'ben');
  expect(english.at(-1)!.sentence).toMatch(/^Over at \d\d:\d\d: S t0 at /);
  const { message } = agent.phones.sendings[0]!;
  expect(message).toMatchObject({ language: 'de', deferral: deferralInGerman, steps: ['A.'] });
  expect(monday).toBeLessThan(agent.nowMs);
});

test('a flood and a digest', async () => {
  const agent = new Plant({
    folder: freshFolder(),
    people: [
      anna,
      { ...person('eva', 'engineer', { email: 'e@works.example', push: false }), language: 'de' },
    ],
    telling: { rota: [{ who: ['anna'] }] },
  });
  for (let i = 0; i < 14; i += 1) agent.send(i, 35);
  await agent.pass(2 * min);
  const flood = agent.phones.sendings.find(({ message }) => message.kind === 'flood')!.message;
  expect(flood.title).toMatch(/^\d+ Alarme · /);
  expect(flood.sentence).toMatch(
    /^\d+ Alarme in kurzer Zeit, davon nicht beantwortet: \d+\. Der schwerste: S t\d+: 35,00 °C, über 30,00 °C\.$/,
  );
});
