/** A whole agent whose site names a mail server and people, and nobody can be reached: until an address is entered. */
import { expect, test, vi } from 'vitest';
import { forebond, scratchFolder, startAgentProcess } from '#tests/agent-process.ts';
import { get, type HealthSeen } from './agent-http.ts';
import { worksSite } from './works-site.ts';

test('it says so at the start and as health, and stops once an address is there', async () => {
  const data = `${scratchFolder()}/data`;
  const email = { server: 'mail.plant.invalid', from: 'alarms@plant.invalid' };
  const site = { ...worksSite, people: 'required', telling: { email } };
  const agent = await startAgentProcess({ site, folder: data });
  await vi.waitFor(
    () => expect(agent.stdout()).toMatch(/^telling {2}Nobody can be told: /m),
    20_000,
  );
  const health = async (): Promise<HealthSeen> =>
    (await get<HealthSeen>(agent.page, '/api/health')).body;
  const { condition, parts, notes } = await health();
  expect([condition, parts.telling]).toEqual(['out-of-specification', 'out-of-specification']);
  expect(notes.telling).toMatch(/^Nobody can be told: .*Switch push on .*$/);

  const words = ['user', 'add', 'Ann Byrne', '--role', 'administrator'];
  const added = await forebond([...words, '--email', 'ann@plant.invalid', '--data', data]);
  expect(added).toMatchObject({ code: 0, stderr: '' });
  await vi.waitFor(async () => expect((await health()).parts.telling).toBe('good'), 20_000);
  expect((await agent.stop()).code).toBe(0);
}, 120_000);
