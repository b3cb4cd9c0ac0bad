/**
 * A site file as `check` looks at it: all that a start needs, and beside it what a start can do
 * without: the calendars of the rota.
 */
import { dirname, join } from 'node:path';
import type { SiteProblem } from '#rules/site/problem.ts';
import { fileText, readSite, type SiteReading } from './read-site.ts';
import { readYaml } from './yaml.ts';

/** As readSite; a calendar beside the file that is missing, or is none, is a problem here. */
export async function checkSite(file: string): Promise<SiteReading> {
  const reading = await readSite(file);
  if (!reading.ok) return reading;
  const found = await calendarProblems(file, reading.source.site.telling?.rota ?? []);
  const text = found.length === 0 ? null : await fileText(file);
  if (typeof text !== 'string') return reading;
  const { place } = readYaml(text, file);
  return { ok: false, problems: found.map(place), more: 0 };
}

const meanwhile = 'until then everyone who wants alarms is told.';

async function calendarProblems(siteFile: string, rota: readonly object[]): Promise<SiteProblem[]> {
  const looked = rota.map(async (entry, i): Promise<SiteProblem[]> => {
    if (!('calendar' in entry) || typeof entry.calendar !== 'string') return [];
    const { calendar } = entry;
    if (/^https?:/i.test(calendar)) return [];
    const path = ['telling', 'rota', i, 'calendar'];
    const text = await fileText(join(dirname(siteFile), calendar));
    if (typeof text !== 'string') {
      const problem = `there is no calendar ${calendar} beside the site file`;
      return [{ path, problem, fix: `Put the file there, or mend its name; ${meanwhile}` }];
    }
    if (/^\uFEFF?BEGIN:VCALENDAR\b/i.test(text)) return [];
    const problem = `${calendar} is no iCalendar text`;
    return [{ path, problem, fix: `Export it as iCalendar (.ics); ${meanwhile}` }];
  });
  return (await Promise.all(looked)).flat();
}
