/** A box with much to say of itself: a sentence at the top of the page, the rest one tap away. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { begunAnewWords } from '#agent/wiring/finding-words.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { launch, open } from './chromium.ts';

let line: BenchLine;
let browser: Browser;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(), launch()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await line?.stop();
});

test.each(['en-IE', 'de-DE'] as const)('in %s: 30 words, then all of them', async (language) => {
  const { page, context } = await open(browser, `${line.agent.page}/#/line`, { language });
  const note = `${begunAnewWords} ${'And more of it. '.repeat(12)}`.trim();
  await page.route('**/api/stream', async (route) => {
    const condition = 'out-of-specification';
    const health = { condition, parts: { record: condition }, notes: { record: note } };
    const body = `event: health\ndata: ${JSON.stringify(health)}\n\n`;
    await route.fulfill({ contentType: 'text/event-stream', body });
  });
  await page.reload();
  const box = page.locator('.ill');
  await box.waitFor();
  const first = (await box.locator('summary').textContent()) ?? '';
  expect(first.split(/\s+/).length).toBeLessThanOrEqual(30);
  const said = box.getByText('And more of it.');
  expect(await said.isVisible()).toBe(false);
  await box.locator('summary').click();
  await said.waitFor();
  expect(await said.getAttribute('lang')).toBe('en');
  await context.close();
});
