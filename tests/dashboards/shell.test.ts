import { beforeEach, describe, expect, test } from 'vitest';
import { assetsIn, Shell, shellCache, wayOf } from '../../dashboards/worker/shell.ts';

const origin = 'https://agent.example';
const html = (...names: string[]) =>
  names.map((name) => `<script src="/assets/${name}"></script>`).join('\n');

/** Caches in memory, as far as the shell uses them; what they add comes from `server`. */
class Kept {
  readonly stores = new Map<string, Map<string, Response>>();
  private readonly server: Server;
  constructor(server: Server) {
    this.server = server;
  }
  readonly caches = {
    open: async (name: string) => this.open(name),
    keys: async () => [...this.stores.keys()],
    delete: async (name: string) => this.stores.delete(name),
  } as unknown as CacheStorage;

  paths(): string[] {
    return [...(this.stores.get(shellCache)?.keys() ?? [])].sort();
  }

  private open(name: string) {
    const store = this.stores.get(name) ?? new Map<string, Response>();
    this.stores.set(name, store);
    const pathOf = (key: Request | string) =>
      new URL(typeof key === 'string' ? key : key.url, origin).pathname;
    return {
      match: async (key: Request | string) => store.get(pathOf(key))?.clone(),
      put: async (key: Request | string, answer: Response) => void store.set(pathOf(key), answer),
      delete: async (key: string) => store.delete(pathOf(key)),
      keys: async () => [...store.keys()].map((path) => ({ url: `${origin}${path}` })),
      addAll: async (paths: string[]) => {
        for (const path of paths) {
          const answer = await this.server.ask(path);
          if (!answer.ok) throw new TypeError(`${path} answers ${answer.status}`);
          store.set(pathOf(path), answer);
        }
      },
    };
  }
}

class Server {
  page: string | null = html('page-1.js', 'page-1.css');
  missing = new Set<string>();
  readonly asked: string[] = [];
  readonly ask = async (request: Request | string, init?: RequestInit): Promise<Response> => {
    const path = new URL(typeof request === 'string' ? request : request.url, origin).pathname;
    this.asked.push(path);
    if (this.page === null)
      return new Promise((_, failed) => {
        const { signal } = init ?? {};
        if (signal == null) failed(new TypeError('no network'));
        signal?.addEventListener('abort', () => failed(signal.reason));
      });
    if (this.missing.has(path)) return new Response('', { status: 404 });
    return new Response(path === '/' ? this.page : `text of ${path}`);
  };
}

let server: Server;
let kept: Kept;
let shell: Shell;
beforeEach(() => {
  server = new Server();
  kept = new Kept(server);
  shell = new Shell({ caches: kept.caches, ask: server.ask, waitMs: 30 });
});

/** A visit, and what goes on after the answer. */
async function visit(): Promise<string> {
  const work: Promise<unknown>[] = [];
  const answer = await shell.shell(new Request(`${origin}/`), (one) => void work.push(one));
  await Promise.all(work);
  return answer.text();
}

test('only the shell and files with a hash in their name are answered from here', () => {
  const way = (path: string, facts: object = {}) =>
    wayOf({ method: 'GET', mode: 'cors', url: `${origin}${path}`, ...facts } as Request, origin);
  expect(way('/', { mode: 'navigate' })).toBe('shell');
  expect(way('/assets/page-1.js')).toBe('asset');
  for (const path of ['/', '/api/alarms', '/api/stream', '/metrics', '/mark.svg'])
    expect(way(path), path).toBeNull();
  expect(way('/api/alarms', { mode: 'navigate' })).toBeNull();
  expect(way('/assets/page-1.js', { method: 'POST' })).toBeNull();
  expect(
    wayOf({ method: 'GET', mode: 'cors', url: 'https://x.example/assets/a' }, origin),
  ).toBeNull();
});

test('names of files in the shell', () => {
  const text =
    '<link href="/assets/a.css"><script src="/assets/b.js"><a href="/x"><link href="/assets/a.css">';
  expect(assetsIn(text)).toEqual(['/assets/a.css', '/assets/b.js']);
});

describe('the page without the agent', () => {
  test('opens as it was last fetched, with its files', async () => {
    await shell.fill();
    expect(kept.paths()).toEqual(['/', '/assets/page-1.css', '/assets/page-1.js']);
    server.page = null;
    expect(await visit()).toBe(html('page-1.js', 'page-1.css'));
    const file = await shell.asset(new Request(`${origin}/assets/page-1.js`));
    expect(await file.text()).toBe('text of /assets/page-1.js');
  });

  test('where nothing was ever kept it fails as without a worker', async () => {
    server.page = null;
    await expect(visit()).rejects.toThrow();
  });

  test('a page that cannot be had whole changes nothing', async () => {
    await shell.fill();
    server.page = html('page-2.js', 'gone.js');
    server.missing.add('/assets/gone.js');
    await expect(shell.fill()).rejects.toThrow('gone.js');
    server.page = null;
    expect(await visit()).toBe(html('page-1.js', 'page-1.css'));
  });
});

test('the agent’s answer goes first, and is what is kept from then on', async () => {
  await shell.fill();
  await shell.asset(new Request(`${origin}/assets/chart-1.js`));
  expect(kept.paths()).toContain('/assets/chart-1.js');
  expect(await visit()).toBe(html('page-1.js', 'page-1.css'));
  expect(kept.paths()).toContain('/assets/chart-1.js');
  server.page = html('page-2.js', 'page-1.css');
  expect(await visit()).toBe(html('page-2.js', 'page-1.css'));
  expect(kept.paths()).toEqual(['/', '/assets/page-1.css', '/assets/page-2.js']);
});

test('a refusal is shown and not kept', async () => {
  await shell.fill();
  server.missing.add('/');
  expect(await visit()).toBe('');
  server.missing.clear();
  server.page = null;
  expect(await visit()).toBe(html('page-1.js', 'page-1.css'));
});

test('a file is asked for once', async () => {
  await shell.fill();
  server.asked.length = 0;
  for (let n = 0; n < 3; n += 1) await shell.asset(new Request(`${origin}/assets/page-1.js`));
  expect(server.asked).toEqual([]);
});

test('what an older worker kept is thrown away', async () => {
  await kept.caches.open('shell-0');
  await shell.fill();
  await shell.clear();
  expect([...kept.stores.keys()]).toEqual([shellCache]);
});
