/** A person sees where they are signed in and ends one; the other page shows nothing any more. In English and German. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { de } from '../../dashboards/text/de.ts';
import { en } from '../../dashboards/text/en.ts';
import { launch, sidewaysPx } from './chromium.ts';
import { type Staffed, startStaffed } from './staffed-page.ts';

let staffed: Staffed;
let browser: Browser;
let operator: string;
beforeAll(async () => {
  [staffed, browser] = await Promise.all([startStaffed(), launch()]);
  operator = await staffed.join('Bob Doyle', 'operator');
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await staffed?.stop();
});

const phone = 'Mozilla/5.0 (Android 14; Mobile; rv:133.0) Gecko/133.0 Firefox/133.0';

test('the lost phone is signed out from another place', async () => {
  const lost = await staffed.signIn('Bob Doyle', phone);
  const onPhone = await staffed.visit(browser, lost, '#/line');
  const here = await staffed.visit(browser, operator, '#/me');
  const entry = here.locator('.entry', { hasText: 'Firefox, Android' });
  await entry.getByText(/^since \d\d:\d\d, last used \d\d:\d\d$/).waitFor();
  expect(await here.getByText(en.sessionHere).count()).toBe(1);
  const button = entry.getByRole('button', { name: `${en.sessionEnd}: Firefox, Android` });
  expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(56);
  expect(await sidewaysPx(here)).toBe(0);
  const { violations } = await new AxeBuilder({ page: here }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await button.click();
  await entry.waitFor({ state: 'detached' });
  // Without a touch, as soon as it asks for anything.
  await onPhone.reload();
  await onPhone.getByRole('heading', { name: en.signIn }).waitFor();
  expect(await onPhone.locator('.counts').count()).toBe(0);
  await here.getByText(en.sessionHere).waitFor();
  await Promise.all([onPhone.context().close(), here.context().close()]);
}, 90_000);

test.each(['light', 'dark'] as const)(
  'you and people in German, %s: axe finds nothing',
  async (ground) => {
    for (const [cookie, hash, drawn] of [
      [operator, '#/me', de.sessions],
      [staffed.administrator, '#/people', 'Bob Doyle'],
      [operator, '#/people', /Ihre Rolle: Bedienung\.$/],
    ] as const) {
      const page = await staffed.visit(browser, cookie, hash, { ground, language: 'de-DE' });
      await page.getByText(drawn).first().waitFor();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => [hash, id, nodes.map(({ html }) => html)])).toEqual(
        [],
      );
      await page.context().close();
    }
  },
  90_000,
);

test.each(['light', 'dark'] as const)(
  'the door in German, %s: axe finds nothing',
  async (colorScheme) => {
    const context = await browser.newContext({ locale: 'de-DE', colorScheme });
    const page = await context.newPage();
    page.setDefaultTimeout(20_000);
    for (const [hash, drawn] of [
      ['#/', de.signInWhat],
      ['#/invitation/aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', de.invitationNone],
    ] as const) {
      await page.goto(`${staffed.agent.page}/${hash}`);
      await page.reload();
      await page.getByText(drawn).waitFor();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    }
    await context.close();
  },
  60_000,
);
