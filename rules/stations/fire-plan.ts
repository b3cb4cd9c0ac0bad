/** How the alarms that may mean fire name the site's fire plan. */
import type { Bilingual, Given } from './station.ts';

/** Where the site gave none, the step stands without it and coverage asks. */
export function firePlanFacts({ firePlan }: Given): { readonly plan: string | Bilingual } {
  if (firePlan === null) return { plan: '' };
  const { phone, muster_point: muster, lone_worker: alone } = firePlan;
  const say = (telephone: string, point: string, single: string): string =>
    ` (${telephone} ${phone}, ${point} ${muster}${alone === undefined ? '' : `; ${single}: ${alone}`})`;
  return {
    plan: {
      text: say('telephone', 'muster point', 'alone'),
      german: say('Telefon', 'Sammelplatz', 'allein'),
    },
  };
}

export const planOverrules = 'The site’s fire plan and the fire service overrule this page.';
