/**
 * A real browser for tests: Debian's chromium, driven over its own protocol. Pages come in the three
 * sizes the page is made for; every page tells what went wrong in it.
 */
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';

export const sizes = {
  phone: { width: 390, height: 844, textPx: 16 },
  /** The narrowest, with text twice as large. */
  narrow: { width: 320, height: 640, textPx: 32 },
  desk: { width: 1_440, height: 900, textPx: 16 },
} as const;
export type Size = keyof typeof sizes;

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const launch = (more: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ executablePath: '/usr/bin/chromium', args: [...flags, ...more] });

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the page complained of: errors thrown, refused by its own content policy, failed loads. */
  readonly complaints: readonly string[];
}

export interface OpenOptions {
  readonly size?: Size;
  readonly ground?: 'light' | 'dark';
  /** A local zone; the site's own by default, so that no zone has to be named. */
  readonly zone?: string;
  /** What the browser asks for; English by default. */
  readonly language?: 'en-IE' | 'de-DE';
}

/** A browser of somebody else's: nothing is shared with other pages. */
export async function open(
  browser: Browser,
  url: string,
  options: OpenOptions = {},
): Promise<Opened> {
  const { size = 'phone', ground = 'light', zone = 'Europe/Dublin', language = 'en-IE' } = options;
  const { width, height, textPx } = sizes[size];
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: ground,
    timezoneId: zone,
    locale: language,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(url);
  await page.evaluate((px) => {
    document.documentElement.style.fontSize = `${px}px`;
  }, textPx);
  await page.locator('.counts').waitFor();
  return { page, context, complaints };
}

/** How far the page is wider than what shows of it, in CSS pixels. */
export const sidewaysPx = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
