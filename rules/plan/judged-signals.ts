/** Which signals a rule judges: those the site names, else those of its template that are bound. */
import type { RuleKind } from '../kinds/kind.ts';
import { counted } from '../quantity/counted.ts';
import { canonicalUnit, dimensionWords } from '../quantity/unit.ts';
import type { RuleWritten } from '../site/rule-schema.ts';
import {
  type Path,
  type Report,
  reportNoSignal,
  type SignalDraft,
  type StationDraft,
} from './draft.ts';

/**
 * The one it is about first; null where it has nothing to judge, which is a problem only of what the
 * site wrote. A kind of one signal takes the first candidate that is bound; a kind of several with
 * roles takes all of them or none, one of a group those that are bound.
 */
export function judgedSignals(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  kind: Pick<RuleKind, 'name' | 'takes' | 'without' | 'marks'>,
  candidates: readonly string[],
  own: RuleWritten | undefined,
  path: Path,
  report: Report,
): readonly SignalDraft[] | null {
  const wanted = wantedSignals(kind, own, path, report);
  if (wanted === null) return null;
  const bound = (names: readonly string[]): SignalDraft[] =>
    names.flatMap((name) => signals.get(name) ?? []);
  if (wanted.length === 0) {
    const found = bound(candidates);
    const { takes } = kind;
    if (takes === undefined) return found.length === 0 ? null : found.slice(0, 1);
    const fewer = takes.units === 'same' || kind.without !== undefined;
    const enough = fewer ? takes.least : candidates.length;
    const least = kind.marks === undefined ? 1 : 0;
    return found.length < Math.max(least, enough) ? null : found.slice(0, takes.most);
  }
  const missing = wanted.filter((name) => !signals.has(name));
  const at = own?.signals === undefined ? 'signal' : 'signals';
  for (const name of missing) reportNoSignal(station, signals, name, [...path, at], report);
  if (missing.length > 0) return null;
  const found = bound(wanted);
  return fits(kind, found, [...path, at], report) ? found : null;
}

/** Empty where the site names none; null where it names them in a way the kind cannot take. */
function wantedSignals(
  kind: Pick<RuleKind, 'name' | 'takes'>,
  own: RuleWritten | undefined,
  path: Path,
  report: Report,
): readonly string[] | null {
  const { takes } = kind;
  if (own?.signal !== undefined && own.signals !== undefined) {
    report({
      path: [...path, 'signal'],
      problem: 'it names signal and signals',
      fix: 'Keep signals for a kind of several, signal for a kind of one.',
    });
    return null;
  }
  if (takes === undefined && own?.signals !== undefined) {
    report({
      path: [...path, 'signals'],
      problem: `${kind.name} judges one signal`,
      fix: 'Write signal: and its name; a second rule judges the other.',
    });
    return null;
  }
  if (takes !== undefined && takes.least > 1 && own?.signal !== undefined) {
    report({
      path: [...path, 'signal'],
      problem: `${kind.name} judges several signals together`,
      fix: 'Write signals: and their names in a list, as signals: [a, b].',
    });
    return null;
  }
  return own?.signals ?? (own?.signal === undefined ? [] : [own.signal]);
}

function fits(
  kind: Pick<RuleKind, 'name' | 'takes'>,
  found: readonly SignalDraft[],
  path: Path,
  report: Report,
): boolean {
  const { takes } = kind;
  if (takes === undefined) return true;
  if (new Set(found).size < found.length) {
    report({ path, problem: 'one signal is named twice', fix: 'Name each signal once.' });
    return false;
  }
  if (found.length < takes.least || found.length > takes.most) {
    const most = counted(takes.most, 'signal');
    const count = takes.least === takes.most ? most : `${takes.least} to ${most}`;
    report({
      path,
      problem: `${kind.name} takes ${count}, not ${found.length}`,
      fix: 'Name as many, in the order the kind says (docs/kinds.md).',
    });
    return false;
  }
  for (const [i, signal] of found.entries()) {
    if (takes.units === 'any') continue;
    const unit = takes.units === 'same' ? found[0]!.unit : takes.units[i]!;
    if (signal.unit === unit) continue;
    report({
      path: [...path, i],
      problem: `"${signal.name}" is ${dimensionWords(canonicalUnit(signal.unit))}, where ${kind.name} takes ${dimensionWords(canonicalUnit(unit))}`,
      fix: 'Name a signal of that quantity, in the order the kind says (docs/kinds.md).',
    });
    return false;
  }
  return true;
}
