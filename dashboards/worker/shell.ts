/**
 * The page without the agent: its shell and files as they were last fetched, so that it opens and says
 * how old what it knows is.
 *
 * Always true: what the agent answers goes first; nothing under /api/ is kept here (the page keeps its
 * last state by itself, see state/kept.ts); files with their
 * hash in the name are the same for ever, and those the shell names no more are thrown away.
 */
export const shellCache = 'shell-1';
/** The agent is waited for so long before the kept shell is shown. */
export const shellWaitMs = 4_000;

export interface ShellParts {
  readonly caches: CacheStorage;
  readonly ask: (request: Request | string, init?: RequestInit) => Promise<Response>;
  readonly waitMs?: number;
}

/** What of the page is answered from here; null: the browser asks as if there were no worker. */
export function wayOf(
  request: Pick<Request, 'method' | 'mode' | 'url'>,
  origin: string,
): Way | null {
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== origin) return null;
  if (request.mode === 'navigate') return url.pathname === '/' ? 'shell' : null;
  return url.pathname.startsWith('/assets/') ? 'asset' : null;
}
export type Way = 'shell' | 'asset';

/** Paths under /assets/ that an HTML text names. */
export const assetsIn = (html: string): string[] => [
  ...new Set([...html.matchAll(/(?:src|href)="(\/assets\/[^"]+)"/g)].map((match) => match[1]!)),
];

export class Shell {
  private readonly parts: ShellParts;

  constructor(parts: ShellParts) {
    this.parts = parts;
  }

  /** Fetches and keeps all of it. Rejects where something cannot be had; then nothing has changed. */
  async fill(): Promise<void> {
    const answer = await this.parts.ask('/', { cache: 'no-cache' });
    if (!answer.ok) throw new Error(`the page answers ${answer.status}`);
    await this.keep(answer);
  }

  /** What an older worker kept is thrown away. */
  async clear(): Promise<void> {
    const { caches } = this.parts;
    const others = (await caches.keys()).filter(
      (name) => /^shell-/.test(name) && name !== shellCache,
    );
    await Promise.all(others.map((name) => caches.delete(name)));
  }

  /** `later`: what goes on after the answer. */
  async shell(request: Request, later: (work: Promise<unknown>) => void): Promise<Response> {
    const { ask, waitMs = shellWaitMs } = this.parts;
    try {
      const answer = await ask(request, { signal: AbortSignal.timeout(waitMs) });
      if (answer.ok) later(this.keep(answer.clone()));
      return answer;
    } catch (error) {
      const cache = await this.parts.caches.open(shellCache);
      const kept = await cache.match('/');
      if (kept === undefined) throw error;
      return kept;
    }
  }

  async asset(request: Request): Promise<Response> {
    const cache = await this.parts.caches.open(shellCache);
    const kept = await cache.match(request);
    if (kept !== undefined) return kept;
    const answer = await this.parts.ask(request);
    if (answer.ok) await cache.put(request, answer.clone());
    return answer;
  }

  private async keep(answer: Response): Promise<void> {
    const cache = await this.parts.caches.open(shellCache);
    const html = await answer.clone().text();
    const assets = assetsIn(html);
    const missing = [];
    for (const path of assets) if ((await cache.match(path)) === undefined) missing.push(path);
    await cache.addAll(missing);
    const former = await cache.match('/');
    const before = former === undefined ? [] : assetsIn(await former.text());
    await cache.put('/', answer);
    if (before.join() !== assets.join()) await this.dropOthers(cache, assets);
  }

  /** The shell is another one: files fetched besides, for the one before, go too. */
  private async dropOthers(cache: Cache, assets: readonly string[]): Promise<void> {
    const kept = (await cache.keys()).map(({ url }) => new URL(url).pathname);
    const others = kept.filter((path) => path !== '/' && !assets.includes(path));
    await Promise.all(others.map((path) => cache.delete(path)));
  }
}
