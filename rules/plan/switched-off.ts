/**
 * Rules that the site file switches off: with a reason, and where people can be hurt by what they
 * watch with a name that answers for it.
 */
import type { RuleWritten } from '../site/rule-schema.ts';
import type { RuleTemplate } from '../stations/station.ts';
import type { Report, StationDraft } from './draft.ts';

/** Switched off by the site file. */
export interface OffRule {
  readonly name: string;
  readonly reason: string;
  readonly signedBy: string | null;
  readonly people: boolean;
}

/** People can be hurt by what it watches, or it is highly managed. */
export const guards = ({ kind }: StationDraft, template: RuleTemplate): boolean =>
  template.class.highlyManaged ||
  kind.hazards.some(({ id, people }) => people && id === template.hazard);

const reasonLettersMin = 10;

/** null where it is not; what is said too little for it is reported. */
export function switchedOff(
  station: StationDraft,
  name: string,
  people: boolean,
  report: Report,
): OffRule | null {
  const words = writtenFor(station.written.rules ?? {}, name);
  if (words?.off !== true) return null;
  const { reason, signed_by: signedBy } = words;
  const path = [...station.path, 'rules', name, 'off'];
  if (reason === undefined)
    report({
      path,
      problem: 'a rule is switched off without a reason',
      fix: 'Add reason: and say why, in a sentence; coverage shows it.',
    });
  else if (people && reason.trim().length < reasonLettersMin)
    report({
      path,
      problem: `people can be hurt by what this rule watches, and "${reason}" is no reason`,
      fix: `Write reason in a sentence, of ${reasonLettersMin} letters or more: what protects them instead.`,
    });
  if (people && (signedBy === undefined || signedBy.trim() === ''))
    report({
      path,
      problem:
        'people can be hurt by what this rule watches, and nobody answers for switching it off',
      fix: 'Add signed_by with a name, or take off out.',
    });
  return { name, reason: reason ?? 'no reason given', signedBy: signedBy ?? null, people };
}

export const writtenFor = (
  written: Readonly<Record<string, RuleWritten>>,
  name: string,
): RuleWritten | undefined => (Object.hasOwn(written, name) ? written[name] : undefined);
