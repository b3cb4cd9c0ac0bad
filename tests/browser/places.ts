/** Every place of the page that needs nobody signed in, and what is there once it is drawn; and oven runs to show. */
import type { Page } from 'playwright-core';
import { run } from '../agent/web/fake-run.ts';

/** Oven runs as the agent tells them: the bench has no oven that is loaded. Good ones enough for a corridor. */
export const runs = Array.from({ length: 6 }, (_, i) =>
  run({
    id: `mounts-2/oven-1@${i}`,
    opened: run().opened - i * 3_600_000,
    closed: run().opened - i * 3_600_000 + 1_800_000,
    under: i === 0,
  }),
);
const profileOf = (one: (typeof runs)[number]) => ({
  run: one,
  profile: [
    {
      signal: 'mounts-2/oven-1/floor',
      unit: 'Cel',
      points: Array.from({ length: 60 }, (_, i) => {
        const mean = 20 + 60 * (1 - Math.exp(-i / 20)) - (one.under ? 12 : 0);
        return [one.opened + i * 30_000, mean - 1, mean + 1, mean, 3, 0];
      }),
    },
  ],
});

export async function withRuns(page: Page): Promise<void> {
  await page.route('**/api/runs?**', (route) =>
    route.fulfill({ json: { runs, truncated: false } }),
  );
  await page.route('**/api/runs/*', async (route) => {
    const asked = decodeURIComponent(new URL(route.request().url()).pathname.split('/').at(-1)!);
    const found = runs.find((one) => one.id === asked) ?? runs[0]!;
    await route.fulfill({ json: profileOf(found) });
  });
}

export type Place = readonly [name: string, hash: string, drawn: string];

const id = encodeURIComponent;

/** `occurrence`: of an alarm that is open. */
export const places = (occurrence: string): readonly Place[] => [
  ['attention', '#/', '.entry .ruler'],
  ['alarm', `#/alarm/${id(occurrence)}`, '.alarm .plot canvas'],
  ['line', '#/line', '.cell'],
  ['station', `#/station/${id('mounts-2/oven-1')}`, '.signal-row .ruler'],
  ['signal', `#/signal/${id('mounts-2/oven-1/floor')}?span=h1`, '.plot canvas'],
  ['mixer', `#/station/${id('mounts-2/mixer-3')}`, '.signal-row'],
  ['runs', '#/runs', '.past-alarm'],
  ['run', `#/run/${id(runs[0]!.id)}`, '.profile-picture'],
  ['holds', '#/holds', '.hold-name'],
  ['aside', '#/aside', '.aside-name'],
  ['coverage', '#/coverage', '.hazard'],
  ['rules', '#/rules', '.rule'],
  ['performance', '#/performance', '.load'],
  ['due', '#/due', 'h1'],
  ['look back', '#/back', '.past-alarm'],
  ['who would be told', '#/telling', 'h1 + p'],
  ['my phone', '#/phone', '.main-action'],
  ['you', '#/me', 'h1'],
  ['people', '#/people', '.more'],
  ['reader', '#/reader', '.choice'],
];

/** Its details open, and nothing left of the place before. */
export async function goTo(page: Page, [, hash, drawn]: Place): Promise<void> {
  await page.evaluate((to) => {
    if (location.hash === to) return;
    for (const each of document.querySelectorAll('main > *')) each.setAttribute('data-former', '');
    location.hash = to;
  }, hash);
  await page.locator('[data-former]').first().waitFor({ state: 'detached' });
  await page.locator(drawn).first().waitFor();
  await page.evaluate(() => {
    for (const each of document.querySelectorAll('details')) each.open = true;
  });
}
