/** What rules wait for, each thing once: many rules of a station wait for the same number. */
import type { CoverageView } from '../../agent/web/contract.ts';

type Readiness = CoverageView['stations'][number]['rules'][number];

export interface Where {
  readonly rule: string | null;
  readonly setting: string;
}

export interface Need {
  /** A sentence’s beginning, without where it is written. */
  readonly what: string;
  /** Where the site file has it, each place once; none where that is not said. */
  readonly wheres: readonly Where[];
  /** One of its rules is not armed before it is given; else it only confirms them. */
  readonly arms: boolean;
  /** Ids. */
  readonly rules: readonly string[];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Those that arm a rule first, then as the rules come. */
export function needsOf(rules: readonly Readiness[]): Need[] {
  const asked = rules.flatMap(({ rule, readiness, needs }) =>
    needs.map((need) => ({ ...placed(need), rule, arms: readiness === 'not-armed' })),
  );
  return [...Map.groupBy(asked, ({ what }) => what)]
    .map(([what, group]): Need => {
      const wheres = group.flatMap(({ where }) => where ?? []);
      return {
        what,
        wheres: wheres.filter((each, i) => wheres.findIndex((other) => isSame(each, other)) === i),
        arms: group.some(({ arms }) => arms),
        rules: [...new Set(group.map(({ rule }) => rule))],
      };
    })
    .sort((a, b) => Number(b.arms) - Number(a.arms));
}

const isSame = (a: Where, b: Where): boolean => a.rule === b.rule && a.setting === b.setting;

/** `… (rule at-limit: high)` and `… (fire_plan)` name the place in the site file. */
function placed(need: string): { readonly what: string; readonly where: Where | null } {
  const [, what, rule, setting] = /^(.*) \((?:rule ([a-z0-9-]+): )?([a-z_]+)\)$/.exec(need) ?? [];
  if (what === undefined || setting === undefined) return { what: capital(need), where: null };
  return { what: capital(what), where: { rule: rule ?? null, setting } };
}
