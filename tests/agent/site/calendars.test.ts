/** A calendar of the rota that is not there, or is none: `check` says so, in its place; `run` goes on. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { checkSite } from '#agent/site/check-site.ts';
import { readSite } from '#agent/site/read-site.ts';
import { freshFolder } from '#tests/agent/store/folders.ts';

const site = (calendar: string): string => `site: works
timezone: Europe/Dublin
telling:
  rota:
    - { who: [engineer], from: "06:00", to: "22:00" }
    - { calendar: ${calendar} }
lines:
  a:
    bench:
      kind: custom
      signals: { t: { topic: b/t, payload: { kind: plain }, unit: Cel } }
`;

function written(calendar: string, files: Readonly<Record<string, string>> = {}): string {
  const folder = freshFolder();
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  const file = join(folder, 'site.yaml');
  writeFileSync(file, site(calendar));
  return file;
}

async function linesOf(file: string): Promise<string[]> {
  const reading = await checkSite(file);
  return reading.ok
    ? []
    : reading.problems.map(
        ({ line, column, path, problem, fix }) =>
          `${line}:${column} ${path.join('.')} ${problem}. ${fix}`,
      );
}

test('missing: line, column and what to do', async () => {
  const file = written('missing.ics');
  expect(await linesOf(file)).toEqual([
    '6:19 telling.rota.1.calendar there is no calendar missing.ics beside the site file. Put the file there, or mend its name; until then everyone who wants alarms is told.',
  ]);
  // A start must not fail for it.
  expect((await readSite(file)).ok).toBe(true);
});

test('no calendar, and a folder', async () => {
  expect(await linesOf(written('on-call.ics', { 'on-call.ics': 'Anna' }))).toEqual([
    expect.stringMatching(/^6:19 telling.rota.1.calendar on-call.ics is no iCalendar text\. /),
  ]);
});

test('one that is there, and an address, which only the agent asks', async () => {
  const files = { 'on-call.ics': 'BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n' };
  expect(await linesOf(written('on-call.ics', files))).toEqual([]);
  expect(await linesOf(written('https://plant.example/on-call.ics'))).toEqual([]);
});
