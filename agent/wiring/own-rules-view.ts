/** The files of a site's own rules as people see them: on, or off and why, and what that leaves unwatched. */
import type { PersonId } from '#rules/input.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { AgentError } from '../errors.ts';
import { fileOf, textHash } from '../site/extensions/watch.ts';
import type { OwnRulesView } from '../web/own-rules-contract.ts';
import type { Core } from './core.ts';

type FileView = OwnRulesView['files'][number];

export function ownRules(core: Core): FileView[] {
  const { plan } = core.plans.now;
  const off = core.live.running?.present.off;
  return extensionsOf(core).map((extension) => {
    const found = off?.get(extension);
    return {
      file: fileOf(extension),
      text: textHash(extension),
      state: found === undefined ? 'on' : 'off',
      why: found?.why ?? null,
      since: found?.sinceMs ?? null,
      rules: rulesOf(plan, extension),
      signals: signalsOf(plan, extension),
    };
  });
}

/** All that the site brings, used or not. */
function extensionsOf({ plans }: Core): string[] {
  const { rules, derived } = plans.now.ownKinds;
  const kinds = [...rules.values(), ...derived.values()];
  return [...new Set(kinds.flatMap(({ extension }) => extension ?? []))].sort();
}

const rulesOf = (plan: Plan, extension: string): string[] =>
  plan.rules.filter(({ kind }) => kind.extension === extension).map(({ id }) => id);

const signalsOf = (plan: Plan, extension: string): string[] =>
  plan.derived
    .filter((derived) => derived.extension === extension)
    .map(({ signal }) => plan.signals[signal]!.id);

/** What is off, in a sentence a file, with what nobody judges meanwhile. */
export const offNotes = (core: Core): string[] =>
  ownRules(core)
    .filter(({ state }) => state === 'off')
    .map(({ file, why, rules, signals }) => {
      const idle = [
        ...(rules.length === 0 ? [] : [`Not judged: ${rules.join(', ')}.`]),
        ...(signals.length === 0 ? [] : [`Not worked out: ${signals.join(', ')}.`]),
      ];
      return [offWords(file, why), ...idle, onAgainWords].join(' ');
    });

const onAgainWords = 'Mend the file and load the site again, or switch it on as it is.';
const offWords = (file: string, why: string | null): string => `${file} is off: ${why ?? ''}.`;

/** Why a rule is not judged, where its file is off; null for every other. */
export function whyOff(core: Core): (rule: string) => string | null {
  const why = new Map(
    ownRules(core)
      .filter(({ state }) => state === 'off')
      .flatMap((each) => each.rules.map((rule) => [rule, offWords(each.file, each.why)] as const)),
  );
  return (rule) => why.get(rule) ?? null;
}

/** Throws OWN_RULES_UNKNOWN. One that is on stays on. */
export function switchOwnRulesOn(core: Core, file: string, by: PersonId): FileView {
  const extension = extensionsOf(core).find((each) => fileOf(each) === file);
  if (extension === undefined) throw new AgentError('OWN_RULES_UNKNOWN', { file });
  if (core.live.running?.present.off.has(extension) === true)
    core.live.changes.switchOn(extension, by);
  return ownRules(core).find((each) => each.file === file)!;
}
