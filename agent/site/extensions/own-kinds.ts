/** The files of a site's own rules to kinds, guarded; or every problem of them, by file. */
import { derivedKinds } from '#rules/derive/derived.ts';
import type { DerivedKind } from '#rules/derive/derived-kind.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import type { RuleKind } from '#rules/kinds/kind.ts';
import type { OwnKinds } from '#rules/plan/own-kinds.ts';
import { guardedDerived } from './guarded-derived.ts';
import { guardedRule } from './guarded-rule.ts';
import { type ExtensionFault, extensionId, faultOf, loadExtension } from './load.ts';
import { offered } from './offered.ts';
import { readExports } from './shape.ts';
import { type CallWatch, nobody } from './watch.ts';

export interface ExtensionProblem extends ExtensionFault {
  /** As the site file names it. */
  readonly name: string;
}

export interface FoundKinds {
  readonly kinds: OwnKinds;
  readonly problems: readonly ExtensionProblem[];
}

/** `texts`: by the names the site file gives the files, which are read in the order of their names. */
export function ownKindsOf(
  texts: Readonly<Record<string, string>>,
  watch: CallWatch = nobody,
): FoundKinds {
  const rules = new Map<string, RuleKind>();
  const derived = new Map<string, DerivedKind>();
  const problems: ExtensionProblem[] = [];
  for (const [name, text] of Object.entries(texts).sort(([a], [b]) => (a < b ? -1 : 1))) {
    const report = (fault: ExtensionFault): void => void problems.push({ name, ...fault });
    const extension = extensionId(name, text);
    const taken = (
      kind: string,
      of: ReadonlyMap<string, unknown>,
      own: ReadonlyMap<string, unknown>,
    ) => {
      if (!of.has(kind) && !own.has(kind)) return false;
      const fix = 'Give it another name.';
      report({ ...placeOf(text, kind), problem: `there is a kind ${kind} already`, fix });
      return true;
    };
    const made = exportsOf(name, text, extension, watch, report);
    for (const kind of made.kinds)
      if (!taken(kind.name, ruleKinds, rules))
        rules.set(kind.name, guardedRule(kind, extension, watch));
    for (const kind of made.derived)
      if (!taken(kind.name, derivedKinds, derived))
        derived.set(kind.name, guardedDerived(kind, extension, watch));
  }
  return { kinds: { rules, derived }, problems };
}

function exportsOf(
  name: string,
  text: string,
  extension: string,
  watch: CallWatch,
  report: (fault: ExtensionFault) => void,
): ReturnType<typeof readExports> {
  watch.enter(extension);
  try {
    const loaded = loadExtension(name, text);
    if (loaded.ok)
      return readExports(loaded.make(offered), (problem, fix) =>
        report({ ...placeOf(text, problem.split(':')[0] ?? ''), problem, fix }),
      );
    report(loaded.fault);
  } catch (error) {
    report(faultOf(error));
  } finally {
    watch.leave(extension);
  }
  return { kinds: [], derived: [] };
}

/** Where the file speaks of it; its beginning where it does not. */
function placeOf(text: string, word: string): { readonly line: number; readonly column: number } {
  const lines = text.split('\n');
  const line = lines.findIndex((each) => each.includes(`'${word}'`) || each.includes(`"${word}"`));
  return line < 0
    ? { line: 1, column: 1 }
    : { line: line + 1, column: lines[line]!.search(/\S/) + 1 };
}
