/** Which marks a rule judges: those the site names, else those of its template. */
import type { RuleKind } from '../kinds/kind.ts';
import { didYouMean } from '../site/nearest.ts';
import type { RuleWritten } from '../site/rule-schema.ts';
import type { MarkDraft, Path, Report, StationDraft } from './draft.ts';

/** In the order of their roles; null where the site names them in a way the kind cannot take. */
export function judgedMarks(
  station: StationDraft,
  kind: Pick<RuleKind, 'name' | 'marks'>,
  candidates: readonly string[],
  own: RuleWritten | undefined,
  path: Path,
  report: Report,
): readonly MarkDraft[] | null {
  const { marks: takes } = kind;
  const names = own?.marks ?? candidates;
  const at = [...path, 'marks'];
  if (takes === undefined) {
    if (own?.marks === undefined) return [];
    report({
      path: at,
      problem: `${kind.name} judges no marks`,
      fix: 'Take marks out, or choose a kind that judges them: age or sequence.',
    });
    return null;
  }
  const unknown = names.filter((name) => !station.marks.has(name));
  for (const name of unknown)
    report({
      path: at,
      problem: `this station has no mark "${name}"`,
      fix: didYouMean(name, [...station.marks.keys()]),
    });
  if (unknown.length > 0) return null;
  if (new Set(names).size < names.length) {
    report({ path: at, problem: 'one mark is named twice', fix: 'Name each mark once.' });
    return null;
  }
  if (names.length < takes.least || names.length > takes.most) {
    report({
      path: at,
      problem: `${kind.name} takes ${takes.least} to ${takes.most} marks, not ${names.length}`,
      fix: `Name them in this order: ${takes.roles.join(', then ')}.`,
    });
    return null;
  }
  return names.map((name) => station.marks.get(name)!);
}
