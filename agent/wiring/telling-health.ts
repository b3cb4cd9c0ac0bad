/** Whether an alarm would reach somebody now, for health, the page and the line at the start. */
import { counted } from '#rules/quantity/counted.ts';
import type { Core } from './core.ts';

const nobody =
  'Nobody can be told: no person has a phone or an e-mail address. Switch push on under Look back, My phone, or enter an address there.';

/**
 * What is wrong with telling where the site names ways or people, or has people; null where nothing is, or
 * where nobody asks for any.
 */
export function tellingNote(core: Core): string | null {
  const { telling: written, people } = core.plans.source.site;
  const { telling } = core;
  const hasPeople = (telling?.parts.persons.list().length ?? 0) > 0;
  if (written === undefined && people === undefined && !hasPeople) return null;
  const any = { station: '', hazard: null, priority: 'high' } as const;
  const rungs = telling?.ladder(any).rungs.length ?? 0;
  if (rungs === 0) return (telling?.webhooks.length ?? 0) > 0 ? null : nobody;
  const alone = core.plans.now.rules.filter(
    ({ id, class: { highlyManaged }, hazard, readiness }) =>
      highlyManaged && readiness !== 'not-armed' && telling!.isUnstaffed(stationOf(id), hazard),
  );
  const [first] = alone;
  if (first === undefined) return null;
  const alarms = counted(alone.length, 'highly managed alarm');
  const among = alone.length === 1 ? first.id : `${first.id} among them`;
  return `The rota has nobody on call now for ${alarms}, ${among}; everyone who wants alarms is told. Mend telling: rota: in the site file.`;
}

const stationOf = (rule: string): string => rule.split('/').slice(0, 2).join('/');
