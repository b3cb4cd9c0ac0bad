/** The site as it was accepted last, from a folder's record: whole and of the same name, or not at all. */
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readSite } from '#agent/site/read-site.ts';
import { compileSource, type SiteSource } from '#agent/site/revision.ts';
import { openStore } from '#agent/store/store.ts';
import { lastAccepted } from '#agent/wiring/last-accepted.ts';
import { scratchFolder } from '#tests/agent-process.ts';

const examples = 'docs/examples/sample-works';

/** The sample works in a folder of its own, accepted into a data folder beside it. */
async function scene(keptText: (text: string) => string = (text) => text) {
  const folder = scratchFolder();
  const data = join(folder, 'data');
  cpSync(examples, join(folder, 'site'), { recursive: true });
  const file = join(folder, 'site', 'site.yaml');
  const reading = await readSite(file);
  if (!reading.ok) throw new Error('the sample works is broken');
  const { plan, text } = compileSource(reading.source, {});
  const store = openStore(data, { now: () => Date.now(), ballastBytes: 0 });
  store.keepSiteRevision(plan.revision, keptText(text));
  store.close();
  return { file, data, source: reading.source, revision: plan.revision };
}

const written = (file: string, change: (text: string) => string): void =>
  writeFileSync(file, change(readFileSync(file, 'utf8')));

test('it is the revision whole, its material sheets with it', async () => {
  const { file, data, source, revision } = await scene();
  written(file, (text) => text.slice(0, text.length / 2));
  rmSync(join(file, '..', 'materials'), { recursive: true });
  const found = await lastAccepted(file, data);
  expect(found).toEqual({ source, revision });
  expect(Object.keys(found!.source.materials)).toEqual(Object.keys(source.materials));
  expect(Object.keys(source.materials).length).toBeGreaterThan(0);
});

test('a file without its name may be of this site: empty, gone, cut off within the name', async () => {
  const { file, data, source } = await scene();
  for (const text of ['', '\0\0\0', `site: ${source.site.site.slice(0, 3)}`]) {
    writeFileSync(file, text);
    expect((await lastAccepted(file, data))?.source).toEqual(source);
  }
  rmSync(file);
  expect((await lastAccepted(file, data))?.source).toEqual(source);
});

test('a file that names another site gets none', async () => {
  const { file, data, source } = await scene();
  writeFileSync(file, `site: "${source.site.site}" # ours\ntimezone: [`);
  expect(await lastAccepted(file, data)).not.toBeNull();
  writeFileSync(file, 'timezone: [\nsite: other-works\n');
  expect(await lastAccepted(file, data)).toBeNull();
});

test('nothing where no folder is, where it is empty, or where what is kept is not whole', async () => {
  const { file, data } = await scene();
  expect(await lastAccepted(file, `${data}-none`)).toBeNull();
  expect(await lastAccepted(file, join(file, '..'))).toBeNull();
  const damaged = await scene((text) => text.replace('"timezone":"', '"timezone":"X'));
  expect(await lastAccepted(damaged.file, damaged.data)).toBeNull();
  const torn = await scene((text) => text.slice(0, text.length / 2));
  expect(await lastAccepted(torn.file, torn.data)).toBeNull();
});

test('a revision that this version would not accept is none', async () => {
  const { file, data, source } = await scene();
  const old: SiteSource = { ...source, site: { ...source.site, timezone: 'Nowhere/At-All' } };
  const { plan, text } = compileSource(old, {});
  const store = openStore(data, { now: () => Date.now(), ballastBytes: 0 });
  store.keepSiteRevision(plan.revision, text);
  store.close();
  expect(await lastAccepted(file, data)).toBeNull();
});
