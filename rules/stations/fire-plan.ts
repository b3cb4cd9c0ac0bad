/** How the alarms that may mean fire name the site's fire plan. */
import type { Given } from './station.ts';

/** Where the site gave none, the step stands without it and coverage asks. */
export function firePlanFacts({ firePlan }: Given): Readonly<Record<string, string>> {
  if (firePlan === null) return { plan: '' };
  const { phone, muster_point, lone_worker } = firePlan;
  const alone = lone_worker === undefined ? '' : `; alone: ${lone_worker}`;
  return { plan: ` (telephone ${phone}, muster point ${muster_point}${alone})` };
}

export const planOverrules = 'The site’s fire plan and the fire service overrule this page.';
