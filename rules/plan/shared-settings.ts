/** Rules of one kind whose settings are equal hold them in one object: like stations take less room. */
import { canonicalText } from './canonical-text.ts';
import type { PlanRule } from './plan.ts';

export function sharingSettings(rules: readonly PlanRule[]): readonly PlanRule[] {
  const known = new Map<string, unknown>();
  return rules.map((rule) => {
    // What a site's own kind does with its settings nobody knows.
    if (rule.kind.extension !== undefined) return rule;
    const text = `${rule.kind.name} ${canonicalText(rule.settings)}`;
    const settings = known.get(text) ?? rule.settings;
    known.set(text, settings);
    return { ...rule, settings };
  });
}
