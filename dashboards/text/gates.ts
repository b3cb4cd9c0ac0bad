/** In which states a rule is judged, in words. */
import type { RuleView } from '../../agent/web/contract.ts';
import { ownName } from './names.ts';
import { plainQuantity } from './quantity.ts';
import { say } from './say.ts';

type Gate = RuleView['gates'][number];

function gateText({ signal, low, high, unit }: Gate): string {
  const name = ownName(signal);
  if (unit === '1') return say(low === null ? 'gateNo' : 'gateYes', { name });
  if (low === null)
    return high === null ? name : say('gateUpTo', { name, high: plainQuantity(high, unit) });
  const from = plainQuantity(low, unit);
  return high === null
    ? say('gateFrom', { name, low: from })
    : say('gateWithin', { name, low: from, high: plainQuantity(high, unit) });
}

export const gatesText = (gates: readonly Gate[]): string => gates.map(gateText).join('; ');
