import { expect, test } from 'vitest';
import { ensureDebianPackages, type Machine, thisMachine } from './debian.ts';

/** A machine that has `programs`, and what it was told to do and said. */
function machine(programs: readonly string[], facts: Partial<Machine> = {}) {
  const asked: string[] = [];
  const said: string[] = [];
  const made: Machine = {
    isThere: (program) => programs.includes(program),
    isRoot: true,
    apt: (line) => asked.push(line.join(' ')) > 0,
    print: (line) => said.push(line),
    ...facts,
  };
  return { made, asked, said };
}
const all = ['mosquitto_pub', 'mosquitto', 'faketime', 'cc', 'chromium', 'apt-get'];

test('where all is there, nothing is done or said', () => {
  const { made, asked, said } = machine(all);
  expect(ensureDebianPackages(made)).toBe(true);
  expect([asked, said]).toEqual([[], []]);
});
test('root gets what is missing, after fresh lists', () => {
  const { made, asked } = machine(['mosquitto', 'cc', 'chromium', 'apt-get']);
  expect(ensureDebianPackages(made)).toBe(true);
  expect(asked).toEqual([
    'update',
    'install -y --no-install-recommends mosquitto-clients faketime',
  ]);
});
test.each([
  ['somebody else', all.slice(1), { isRoot: false }],
  ['a machine without apt-get', all.slice(1, -1), {}],
])('%s is told what to install', (_, programs, facts) => {
  const { made, asked, said } = machine(programs, facts);
  expect(ensureDebianPackages(made)).toBe(false);
  expect(asked).toEqual([]);
  expect(said[0]).toContain('sudo apt-get install mosquitto-clients');
});
test('an apt-get that fails is said', () => {
  const { made, said } = machine(all.slice(1), { apt: () => false });
  expect(ensureDebianPackages(made)).toBe(false);
  expect(said.at(-1)).toContain('could not install mosquitto-clients');
});
test('programs of this machine are found by name', () => {
  expect(thisMachine.isThere('sh')).toBe(true);
  expect(thisMachine.isThere('no-such-program')).toBe(false);
});
