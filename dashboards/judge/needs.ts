/** What rules wait for, each thing once: many rules of a station wait for the same number. */
import type { CoverageView } from '../../agent/web/contract.ts';

type Readiness = CoverageView['stations'][number]['rules'][number];

export interface Need {
  /** A sentence’s beginning, without where it is written. */
  readonly what: string;
  /** Where the site file has it; null where that is not said. */
  readonly where: { readonly rule: string | null; readonly setting: string } | null;
  /** A rule is not armed before it is given; else it only confirms one. */
  readonly arms: boolean;
  /** Ids. */
  readonly rules: readonly string[];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Those that arm a rule first, then as the rules come. */
export function needsOf(rules: readonly Readiness[]): Need[] {
  const asked = rules.flatMap(({ rule, readiness, needs }) =>
    needs.map((need) => ({ need, rule, arms: readiness === 'not-armed' })),
  );
  const byNeed = Map.groupBy(asked, ({ need, arms }) => `${arms} ${need}`);
  return [...byNeed.values()]
    .map(([first, ...others]): Need => {
      const { need, arms, rule } = first!;
      return { ...placed(need), arms, rules: [rule, ...others.map((each) => each.rule)] };
    })
    .sort((a, b) => Number(b.arms) - Number(a.arms));
}

/** `… (rule at-limit: high)` and `… (fire_plan)` name the place in the site file. */
function placed(need: string): Pick<Need, 'what' | 'where'> {
  const [, what, rule, setting] = /^(.*) \((?:rule ([a-z0-9-]+): )?([a-z_]+)\)$/.exec(need) ?? [];
  if (what === undefined || setting === undefined) return { what: capital(need), where: null };
  return { what: capital(what), where: { rule: rule ?? null, setting } };
}
