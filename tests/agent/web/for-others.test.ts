import { describe, expect, test } from 'vitest';
import { type PagePlace, pageForOthers } from '#agent/web/for-others.ts';

const place = (part: Partial<PagePlace>): PagePlace => ({
  ...{ scheme: 'https', address: '0.0.0.0', port: 8620, names: [], sitePage: null },
  ...part,
});

describe('on this machine alone', () => {
  const here = place({ scheme: 'http', address: '127.0.0.1' });
  test('it says so, by the address it was asked under', () => {
    expect(pageForOthers(here)).toEqual({ page: 'http://127.0.0.1:8620', onlyHere: true });
    expect(pageForOthers(here, 'localhost:8620')).toEqual({
      ...{ page: 'http://localhost:8620', onlyHere: true },
    });
    expect(pageForOthers(place({ scheme: 'http', address: '::1' })).page).toBe('http://[::1]:8620');
  });
  test('a name does not make it reachable', () => {
    expect(pageForOthers({ ...here, names: ['box.works.example'] }).onlyHere).toBe(true);
  });
  test('with something before it that others reach, as the site file says', () => {
    const sitePage = 'https://agent.plant.example';
    expect(pageForOthers({ ...here, sitePage })).toEqual({ page: sitePage, onlyHere: false });
    expect(pageForOthers({ ...here, sitePage: 'http://localhost:8620' }).onlyHere).toBe(true);
    expect(pageForOthers({ ...here, sitePage: 'http://[::1]:8620' }).onlyHere).toBe(true);
  });
});

describe('in the plant network', () => {
  test('the first name that others can use', () => {
    const names = ['localhost', 'box.works.example', 'box'];
    expect(pageForOthers(place({ names }), '127.0.0.1:8620')).toEqual({
      ...{ page: 'https://box.works.example:8620', onlyHere: false },
    });
  });
  test('without a name as whoever asks reached it', () => {
    expect(pageForOthers(place({}), '192.0.2.7:8620').page).toBe('https://192.0.2.7:8620');
  });
  test('whoever asks from the machine itself gets no address that leads a phone to itself', () => {
    for (const asked of ['127.0.0.1:8620', 'localhost:8620', '[::1]:8620', undefined]) {
      const { page, onlyHere } = pageForOthers(place({ address: '192.0.2.7' }), asked);
      expect([page, onlyHere]).toEqual(['https://192.0.2.7:8620', false]);
      const every = pageForOthers(place({}), asked);
      // A machine of the test may have no network at all.
      if (!every.onlyHere) expect(every.page).not.toMatch(/127\.0\.0\.1|localhost|::1/);
    }
  });
});
