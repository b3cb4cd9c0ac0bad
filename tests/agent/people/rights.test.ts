import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Role } from '#agent/people/contract.ts';
import { dangerous, type Right, rights, roles } from '#agent/people/rights.ts';
import type { Route } from '#agent/web/route.ts';
import { Staffed } from './staffed.ts';

// One table says who may do what. Every route is held to it: over HTTP, as every role, and as nobody.

let staffed: Staffed;
let people: Awaited<ReturnType<Staffed['everyRole']>>;
beforeAll(async () => {
  staffed = await Staffed.open();
  people = await staffed.everyRole();
});
afterAll(() => staffed.close());

/** Parts of a path, and a body that says nothing: what is allowed is then refused for its content, or done. */
const pathOf = ({ spec }: Route): string => spec.url.replaceAll(/:\w+/g, 'x');
const bodyOf = ({ spec }: Route): object | undefined => (spec.method === 'GET' ? undefined : {});

const isDoor = (code: string | null): boolean =>
  code === 'PEOPLE_MAY_NOT' || code === 'PEOPLE_SIGN_IN_NEEDED' || code === 'PEOPLE_NOT_BY_TOKEN';

const allows = (right: Right | undefined, role: Role): boolean =>
  right !== undefined && (typeof right === 'string' || right.includes(role));

/** These end the session they are asked with. */
const ending = new Set(['signOut', 'signOutEverywhere']);

test('every route stands in the table', () => {
  const operations = staffed.web.routes.map(({ spec }) => spec.operation);
  // The document of the interface is no route of the list.
  const named = new Set([...operations, 'describe']);
  expect(operations.filter((each) => rights[each] === undefined)).toEqual([]);
  expect(Object.keys(rights).filter((each) => !named.has(each))).toEqual([]);
});

test('what is dangerous is an operation that only some may do', () => {
  for (const operation of dangerous) expect(Array.isArray(rights[operation])).toBe(true);
  const ofPeople = Object.keys(rights).filter((each) => /(Person|Role|Token)$/.test(each));
  for (const operation of ofPeople) expect(dangerous.has(operation), operation).toBe(true);
});

describe.each(roles)('as %s', (role) => {
  test('each route is allowed or refused as the table says, and none fails', async () => {
    for (const route of staffed.web.routes) {
      const { operation, stream } = route.spec;
      if (ending.has(operation)) continue;
      const headers = stream === true ? { accept: 'text/plain' } : {};
      const answer = await staffed.ask(
        pathOf(route),
        { cookie: people[role].cookie, ...headers },
        bodyOf(route),
        route.spec.method,
      );
      const allowed = allows(rights[operation], role);
      expect(answer.status, `${operation}: ${answer.text}`).toBeLessThan(500);
      expect([operation, isDoor(answer.code)]).toEqual([operation, !allowed]);
      if (!allowed) expect([operation, answer.status]).toEqual([operation, 403]);
    }
    expect(staffed.faults).toEqual([]);
  });
});

test('as nobody, only what anyone may is answered, and 401 says how one is known', async () => {
  for (const route of staffed.web.routes) {
    const right = rights[route.spec.operation];
    const answer = await staffed.ask(pathOf(route), {}, bodyOf(route), route.spec.method);
    expect(answer.status, route.spec.operation).toBeLessThan(500);
    // The test asks from this machine.
    const open = right === 'anyone' || right === 'near';
    expect([route.spec.operation, answer.code === 'PEOPLE_SIGN_IN_NEEDED']).toEqual([
      route.spec.operation,
      !open,
    ]);
    if (!open) {
      expect(answer.status).toBe(401);
      expect(answer.headers['www-authenticate']).toBe('Bearer');
    }
  }
});

test('commands carry who gave them', async () => {
  staffed.ports.holdCommands.length = 0;
  const body = { what: 'rack', item: '41', reason: 'foam seen' };
  const headers = { cookie: people.operator.cookie };
  expect((await staffed.ask('/api/holds', headers, body)).status).toBe(201);
  expect(staffed.ports.holdCommands).toMatchObject([{ by: people.operator.id }]);
});

test('a refusal is entered, the same one once an hour', async () => {
  const refused = () =>
    staffed.notes.filter(({ what, detail }) => what === 'refused' && detail === 'reloadSite');
  const before = refused().length;
  const headers = { cookie: people.reader.cookie };
  staffed.nowMs += 3_600_001;
  for (let i = 0; i < 3; i += 1) await staffed.ask('/api/site/reload', headers, {});
  expect(refused()).toHaveLength(before + 1);
  expect(refused().at(-1)).toMatchObject({ person: people.reader.id, by: people.reader.id });
});

test('without people whoever is at the machine may do all, as local', async () => {
  const alone = await Staffed.open(false);
  try {
    const answer = await alone.ask('/api/holds', {}, { what: 'rack', item: '4', reason: 'thin' });
    expect(answer.status).toBe(201);
    expect(alone.ports.holdCommands).toMatchObject([{ by: 'local' }]);
    expect((await alone.ask('/api/me')).json).toMatchObject({ people: false, person: null });
    await alone.person('administrator');
    expect((await alone.ask('/api/alarms')).status).toBe(401);
  } finally {
    await alone.close();
  }
});
