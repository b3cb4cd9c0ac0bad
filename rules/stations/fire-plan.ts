/** How the alarms that may mean fire name the site's fire plan. */
import type { Given } from './station.ts';

/** Where the site gave none, the step stands without it and coverage asks. */
export const firePlanFacts = (given: Given): Readonly<Record<string, string>> => ({
  plan:
    given.firePlan === null
      ? ''
      : ` (telephone ${given.firePlan.phone}, muster point ${given.firePlan.muster_point})`,
});

export const planOverrules = 'The site’s fire plan and the fire service overrule this page.';
