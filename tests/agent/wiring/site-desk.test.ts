/** The file beside an agent that had to start on what was accepted last, look by look. */
import { expect, test } from 'vitest';
import { AgentError } from '#agent/errors.ts';
import { siteChanges } from '#agent/site/changes.ts';
import type { SiteReading } from '#agent/site/read-site.ts';
import { compileSource, type SiteSource } from '#agent/site/revision.ts';
import type { LedgerBody } from '#agent/store/contract.ts';
import { SiteDesk } from '#agent/wiring/site-desk.ts';
import { sourceOf, works } from './works.ts';

const limited = (high: string): SiteSource =>
  sourceOf(
    works(
      `h: { kind: band, signal: wall, high: ${high} Cel, priority: low, consequence: C., actions: [A.] }`,
    ),
  );
const whole = (source: SiteSource): SiteReading => ({
  ok: true,
  source,
  compiled: compileSource(source, {}),
});
const problem = {
  path: [],
  problem: 'a character is missing',
  fix: 'Close the bracket.',
  file: 'site.yaml',
  line: 3,
  column: 7,
};
const broken: SiteReading = { ok: false, problems: [problem, problem], more: 1 };

function scene() {
  let running = limited('30');
  const records: LedgerBody[] = [];
  const scene = { reads: broken, refuses: null as AgentError | null };
  const desk = new SiteDesk({
    file: 'nowhere/site.yaml',
    read: async () => scene.reads,
    running: () => running,
    change: (source) => {
      if (scene.refuses !== null) throw scene.refuses;
      const changes = siteChanges(running, source);
      running = source;
      return changes;
    },
    line: ({ file, line, column, problem: what }) => `${file}:${line}:${column} ${what}`,
    refused: { revision: 'abc', lines: ['site.yaml:1:1 the file says nothing'], more: 0 },
    record: (body) => records.push(body),
    fault: (error) => {
      throw error;
    },
  });
  const end = desk.start();
  end();
  return { desk, scene, records, runs: () => running };
}

test('it says what to mend as the file is now, and takes up what is whole and stands still', async () => {
  const { desk, scene: now, records, runs } = scene();
  expect(desk.unusable).toMatch(
    /^The site file cannot be taken: site\.yaml:1:1 the file says nothing /,
  );
  await desk.look();
  expect(desk.unusable).toMatch(/site\.yaml:3:7 a character is missing And 2 more problems\./);
  // Sound by chance, while it is still being written.
  now.reads = whole(limited('31'));
  await desk.look();
  now.reads = whole(limited('32'));
  await desk.look();
  now.reads = broken;
  await desk.look();
  now.reads = whole(limited('32'));
  await desk.look();
  expect(desk.unusable).not.toBeNull();
  expect(runs()).toEqual(limited('30'));
  await desk.look();
  expect([desk.unusable, desk.note]).toEqual([null, null]);
  expect(runs()).toEqual(limited('32'));
  expect(records.map(({ type }) => type)).toEqual(['site-file-refused', 'site-file-taken-up']);
});

test('a whole file that cannot be taken says why, and is tried again', async () => {
  const { desk, scene: now, runs } = scene();
  now.reads = whole(limited('31'));
  now.refuses = new AgentError('SITE_TOO_LARGE', { signals: '9 signals', rules: '9 rules' });
  await desk.look();
  await desk.look();
  expect(desk.unusable).toContain(now.refuses.message);
  now.refuses = null;
  await desk.look();
  await desk.look();
  expect(desk.unusable).toBeNull();
  expect(runs()).toEqual(limited('31'));
});

test('what somebody loads by hand is taken at once', async () => {
  const { desk, scene: now, records } = scene();
  await expect(desk.load('p1')).rejects.toThrow('The site file has 3 problems');
  now.reads = whole(limited('31'));
  await desk.load('p1');
  expect(desk.unusable).toBeNull();
  expect(records.at(-1)).toMatchObject({ type: 'site-file-taken-up', by: 'p1' });
});
