/**
 * Names: no drawer that takes anything, no barrel, and a number that says its unit.
 *
 * The unit rule is the part that can be told from a name: a number whose last word is a bare
 * quantity (`delay`, `pressure`, `temperature`) has lost its unit. Names such as `value` or `limit`,
 * whose unit is the signal's, and plain counts are left to the reader.
 */
import { lineAt, type Node, type Problem, type SourceFile, walk } from './source.ts';

const drawer =
  /(^|\/)(utils?|helpers?|common|shared|misc|lib|managers?|services?)(\/|\.[a-z]+(\.[a-z]+)*$)/i;

export function drawerNames(path: string): Problem[] {
  if (!drawer.test(path)) return [];
  return [
    {
      place: path,
      problem: 'is a drawer: nobody can say what it is not for.',
      fix: 'Name it after the one thing it says.',
    },
  ];
}

export function barrels(path: string): Problem[] {
  if (!/(^|\/)index\.(ts|tsx|js)$/.test(path) || path.startsWith('dashboards/')) return [];
  return [
    {
      place: path,
      problem: 'is a barrel.',
      fix: 'Import the file that says the thing; name an entry after what it starts.',
    },
  ];
}

const bareQuantity =
  /(^|[a-z])(delay|timeout|interval|duration|age|period|latency|uptime|lifetime|thickness|distance|temperature|pressure|humidity|speed|velocity|density|mass|weight|volume|flow|viscosity|frequency|angle)$/i;
/** Words that end like a quantity and are none: storage, message, stage, percentage … */
const otherWord =
  /(storage|message|stage|page|usage|percentage|coverage|average|manage|package|language|image|passage|outage|voltage|leakage|damage)$/i;

const isNumber = (annotation: unknown): boolean => {
  const node = annotation as Node | null | undefined;
  if (!node) return false;
  const type = (node.typeAnnotation ?? node) as Node;
  const reference = (type.typeName as Node | undefined)?.name;
  return type.type === 'TSNumberKeyword' || reference === 'EpochMs';
};

/** Fields and parameters of type number whose name has lost its unit, in what ships. */
export function unitlessNumbers(source: SourceFile): Problem[] {
  if (source.path.startsWith('tests/')) return [];
  const found: Problem[] = [];
  walk(source.program, (node) => {
    const isField = node.type === 'TSPropertySignature' || node.type === 'PropertyDefinition';
    if (!isField && node.type !== 'Identifier') return;
    const name = String(isField ? ((node.key as Node).name ?? '') : node.name);
    if (!isNumber(node.typeAnnotation)) return;
    if (!bareQuantity.test(name) || otherWord.test(name)) return;
    found.push({
      place: `${source.path}:${lineAt(source.text, node.start)}`,
      problem: `the number "${name}" has lost its unit.`,
      fix: `Put it last, as ${name}Ms, ${name}Bytes, ${name}C or ${name}Count.`,
    });
  });
  return found;
}

/** A unit at the end (Max, Min or Default may follow), a plural somewhere, or what is done (`retained`). */
const saysWhat = /(Ms|S|Bytes|Depth|Length|Share)(Max|Min|Default)?$|[a-z]s([A-Z]|$)|edMax$/;

/** Each bound of agent/limits.ts names its unit or what it counts. */
export const unitlessLimits = (names: readonly string[]): Problem[] =>
  names
    .filter((name) => !saysWhat.test(name))
    .map((name) => ({
      place: 'agent/limits.ts',
      problem: `the bound "${name}" does not say what it counts.`,
      fix: 'Name the unit or the things counted, as queueBytesMax, waitMs or clientsMax.',
    }));
