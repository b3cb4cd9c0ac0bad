/**
 * An agent with people who have come in by its own links, and a browser of each of them. Tests of what a
 * role sees start here; how people come in with their own fingers is tests/browser/people.test.ts.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { type AgentProcess, startAgentProcess } from '../agent-process.ts';
import { until } from '../wire/agent-http.ts';
import { benchSite, buildPage } from './bench-line.ts';
import { type OpenOptions, sizes } from './chromium.ts';

export const password = 'purple tractor under ninth bridge';
const administrator = 'Ann Byrne';

/** A session's cookie, `name=value`. */
type Cookie = string;

export interface Staffed {
  readonly agent: AgentProcess;
  readonly administrator: Cookie;
  /** Somebody else comes in; their cookie. */
  readonly join: (name: string, role: string) => Promise<Cookie>;
  /** Signs in once more, as from another browser. */
  readonly signIn: (name: string, userAgent?: string) => Promise<Cookie>;
  /** A browser in which this cookie is. */
  readonly visit: (
    browser: Browser,
    cookie: Cookie,
    hash: string,
    look?: OpenOptions,
  ) => Promise<Page>;
  readonly stop: () => Promise<void>;
}

/** An answer that is no success throws with its words. */
async function post(
  page: string,
  path: string,
  body: object,
  headers: Readonly<Record<string, string>> = {},
): Promise<{ readonly cookie: Cookie; readonly json: { readonly link?: string } }> {
  const answer = await fetch(new URL(path, page), {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });
  const text = await answer.text();
  if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${text}`);
  const [given = ''] = answer.headers.getSetCookie();
  return { cookie: given.split(';')[0]!, json: JSON.parse(text) };
}

const secretIn = (link: string): string => /invitation\/([\w-]+)/.exec(link)![1]!;

export async function startStaffed(site: object = benchSite): Promise<Staffed> {
  buildPage();
  const place = mkdtempSync(join(tmpdir(), 'forebond-staffed-'));
  const folder = join(place, 'data');
  const agent = await startAgentProcess({ site, folder, words: ['--people'] });
  const { page } = agent;
  const said = await until(
    async () => /first administrator {2}(\S+)/.exec(agent.stdout())?.[1] ?? '',
    (link) => link !== '',
    20_000,
  );
  const first = { secret: secretIn(said), password, name: administrator };
  const { cookie } = await post(page, '/api/invitation/accept', first);
  return {
    agent,
    administrator: cookie,
    join: async (name, role) => {
      const { json } = await post(page, '/api/people', { name, role }, { cookie });
      const given = { secret: secretIn(json.link ?? ''), password };
      return (await post(page, '/api/invitation/accept', given)).cookie;
    },
    signIn: async (name, userAgent) => {
      const headers = userAgent === undefined ? {} : { 'user-agent': userAgent };
      return (await post(page, '/api/session', { name, password }, headers)).cookie;
    },
    visit: (browser, who, hash, look = {}) => visit(browser, `${page}/${hash}`, who, look),
    stop: async () => {
      await agent.stop();
      rmSync(place, { recursive: true, force: true });
    },
  };
}

async function visit(
  browser: Browser,
  url: string,
  cookie: Cookie,
  { size = 'phone', ground = 'light', zone = 'Europe/Dublin', language = 'en-IE' }: OpenOptions,
): Promise<Page> {
  const { width, height } = sizes[size];
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: ground,
    timezoneId: zone,
    locale: language,
    reducedMotion: 'reduce',
  });
  const [name = '', value = ''] = cookie.split('=', 2);
  await context.addCookies([{ name, value, url: new URL(url).origin }]);
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  await page.goto(url);
  await page.locator('.counts').waitFor();
  return page;
}
