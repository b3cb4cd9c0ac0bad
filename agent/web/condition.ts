/**
 * The condition of the whole from the conditions of its parts (NE 107): failure before function
 * check before out of specification before maintenance required before good.
 */
import type { Condition, Health } from './contract.ts';
import type { HealthParts } from './ports.ts';
import { conditionWords } from './words.ts';

/** The worst of the given conditions; good where there are none. */
export function worstCondition(conditions: Iterable<Condition>): Condition {
  const ascending = conditionWords.options;
  let worst = 0;
  for (const condition of conditions) worst = Math.max(worst, ascending.indexOf(condition));
  return ascending[worst]!;
}

export const withCondition = (health: HealthParts): Health => ({
  condition: worstCondition(Object.values(health.parts)),
  ...health,
});
