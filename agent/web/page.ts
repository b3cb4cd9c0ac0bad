/**
 * The built page: its files in memory, each with what a browser must know of it.
 *
 * Always true: only what stood in the folder at the start is served, so no path leads out of it;
 * the shell is asked for anew each time, files with their hash in the name never; nothing runs but
 * files of the agent's own.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, sep } from 'node:path';
import { brotliCompressSync, gzipSync, constants as zlib } from 'node:zlib';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { AgentError } from '../errors.ts';

/** No script or style stands in the HTML; nothing comes from elsewhere, and nothing is sent there. */
export const pagePolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

const yearS = 31_536_000;

interface PageFile {
  readonly type: string;
  readonly cache: string;
  readonly etag: string;
  readonly plain: Buffer;
  /** Made when first asked for. */
  readonly packed: Map<'br' | 'gzip', Buffer>;
}

export type Page = ReadonlyMap<string, PageFile>;

/** Reads the built page; null where there is none. Throws where a file has an ending it does not know. */
export function readPage(folder: string): Page | null {
  let names: string[];
  try {
    names = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
  } catch {
    return null;
  }
  const files = names.map((name): [string, PageFile] => {
    const path = `/${name.split(sep).join('/')}`;
    return [path, pageFile(path, readFileSync(join(folder, name)))];
  });
  const page = new Map(files);
  return page.has('/index.html') ? page : null;
}

function pageFile(path: string, plain: Buffer): PageFile {
  const type = types[extname(path)];
  if (type === undefined) throw new Error(`the page holds ${path}, of a type nobody serves`);
  const hash = createHash('sha256').update(plain).digest('base64url').slice(0, 22);
  const cache = path.startsWith('/assets/') ? `public, max-age=${yearS}, immutable` : 'no-cache';
  return { type, cache, etag: `"${hash}"`, plain, packed: new Map() };
}

/** Answers `/` and every file of the page; what else a person opens gets the shell with 404. */
export function servePage(app: FastifyInstance, page: Page | null): void {
  const shell = page?.get('/index.html') ?? null;
  const answerShell = (request: FastifyRequest, reply: FastifyReply): unknown => {
    if (shell === null) throw new AgentError('WEB_PAGE_MISSING');
    return send(request, reply, shell);
  };
  app.get('/', async (request, reply) => answerShell(request, reply));
  for (const [path, file] of page ?? [])
    if (file !== shell) app.get(path, async (request, reply) => send(request, reply, file));
  app.setNotFoundHandler(async (request, reply) => {
    const path = request.url.split('?', 1)[0]!;
    if (shell === null || !isOpenedByAPerson(request) || path.startsWith('/api/'))
      throw new AgentError('WEB_ROUTE_UNKNOWN', { path });
    reply.code(404);
    return answerShell(request, reply);
  });
}

const isOpenedByAPerson = ({ method, headers }: FastifyRequest): boolean =>
  method === 'GET' && headers['sec-fetch-mode'] === 'navigate';

function send(request: FastifyRequest, reply: FastifyReply, file: PageFile): unknown {
  reply.headers({
    'content-security-policy': pagePolicy,
    'cache-control': file.cache,
    'content-type': file.type,
    etag: file.etag,
    vary: 'accept-encoding',
  });
  if (request.headers['if-none-match'] === file.etag) return reply.code(304).send();
  const encoding = encodingFor(String(request.headers['accept-encoding'] ?? ''));
  if (encoding === null) return reply.send(file.plain);
  reply.header('content-encoding', encoding);
  return reply.send(packed(file, encoding));
}

/** What both sides can: brotli before gzip (RFC 9110 section 12.5.3; a weight of 0 refuses). */
function encodingFor(accepted: string): 'br' | 'gzip' | null {
  const codings = accepted
    .split(',')
    .map((each) => each.trim().toLowerCase())
    .filter((each) => !/;\s*q=0(\.0*)?$/.test(each))
    .map((each) => each.split(';', 1)[0]!.trim());
  return codings.includes('br') ? 'br' : codings.includes('gzip') ? 'gzip' : null;
}

function packed({ plain, packed: kept }: PageFile, encoding: 'br' | 'gzip'): Buffer {
  const known = kept.get(encoding);
  if (known !== undefined) return known;
  const made =
    encoding === 'gzip'
      ? gzipSync(plain)
      : brotliCompressSync(plain, { params: { [zlib.BROTLI_PARAM_QUALITY]: 9 } });
  kept.set(encoding, made);
  return made;
}
