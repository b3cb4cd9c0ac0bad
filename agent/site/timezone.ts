/** Whether a time zone is one this machine knows. */
import { nearest } from '#rules/site/nearest.ts';
import type { SiteProblem } from '#rules/site/problem.ts';

/** A region and a place (or UTC); an offset such as +01:00 knows no summer time and is refused. */
const shape = /^(UTC|[A-Za-z]+(_[A-Za-z]+)*(\/[A-Za-z0-9_+-]+)+)$/;

/** Null where `zone` can be used. */
export function timezoneProblem(zone: string): SiteProblem | null {
  if (shape.test(zone) && isKnown(zone)) return null;
  const zones = Intl.supportedValuesOf('timeZone');
  const city = `/${zone.trim().replaceAll(' ', '_').toLowerCase()}`;
  const near = zones.find((each) => each.toLowerCase().endsWith(city)) ?? nearest(zone, zones);
  return {
    path: ['timezone'],
    problem: `there is no time zone "${zone}"`,
    fix:
      near === null
        ? 'Write an IANA name: a region and a city, as Europe/Dublin; or UTC.'
        : `Did you mean "${near}"?`,
  };
}

function isKnown(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}
