/** The files of a site's own rules: their texts, and every problem of them with its place. */
import { dirname, join } from 'node:path';
import type { OwnKinds } from '#rules/plan/own-kinds.ts';
import { noOwnKinds } from '#rules/plan/own-kinds.ts';
import type { PlacedProblem, SiteProblem } from '#rules/site/problem.ts';
import { ownKindsOf } from './extensions/own-kinds.ts';
import { probe } from './extensions/probe.ts';
import type { SiteSource } from './revision.ts';
import type { YamlText } from './yaml.ts';

export interface ReadExtensions {
  readonly texts: Readonly<Record<string, string>>;
  readonly kinds: OwnKinds;
}

/** Problems are added to the caller's list. */
export async function readExtensions(
  source: SiteSource,
  siteFile: string,
  siteYaml: YamlText,
  read: (file: string) => Promise<string | SiteProblem>,
  problems: PlacedProblem[],
  tryOut: (source: SiteSource) => ReturnType<typeof probe> = probe,
): Promise<ReadExtensions> {
  const texts: Record<string, string> = {};
  const names = source.site.extensions ?? [];
  const at = (name: string) => ['extensions', names.indexOf(name)] as const;
  for (const [i, name] of names.entries()) {
    const path = ['extensions', i];
    if (Object.hasOwn(texts, name)) {
      const problem = `${name} stands here a second time`;
      problems.push(siteYaml.place({ path, problem, fix: 'Keep one of them.' }));
      continue;
    }
    const text = await read(join(dirname(siteFile), name));
    if (typeof text === 'string') texts[name] = text;
    else problems.push(siteYaml.place({ ...text, path }));
  }
  if (Object.keys(texts).length === 0) return { texts, kinds: noOwnKinds };
  const lost = await tryOut({ ...source, extensions: texts });
  if (lost !== null) {
    const { name, fix } = lost;
    if (name === null) {
      const problem = `own rules: ${lost.problem}`;
      problems.push(siteYaml.place({ path: ['extensions'], problem, fix, atKey: true }));
      return { texts, kinds: noOwnKinds };
    }
    const problem = `it ${lost.problem}`;
    const file = join(dirname(siteFile), name);
    problems.push({ path: at(name), problem, fix, file, line: 1, column: 1 });
    return { texts, kinds: noOwnKinds };
  }
  const found = ownKindsOf(texts);
  for (const { name, line, column, problem, fix } of found.problems) {
    const file = join(dirname(siteFile), name);
    problems.push({ path: at(name), problem, fix, file, line, column });
  }
  return { texts, kinds: found.kinds };
}
