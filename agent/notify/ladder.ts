/**
 * Who is told in which order: the rungs of a ladder, from whoever is on call to everyone.
 *
 * Always true: each rung but the first adds somebody; nobody stands on it who cannot be reached;
 * where it is empty, it says why. Readers are never called.
 */
import type { Priority } from '#rules/alarm/priority.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { type Rota, whoIsOn } from '#rules/telling/rota.ts';
import type { Role, TellablePerson } from './contract.ts';

export interface Ladder {
  /** None is empty. */
  readonly rungs: readonly (readonly TellablePerson[])[];
  /** What is wrong with it, in whole sentences. */
  readonly causes: readonly string[];
}

export interface Subject {
  /** `line/station`. */
  readonly station: string;
  readonly hazard: string | null;
  readonly priority: Priority;
}

const roles: readonly string[] = [
  'operator',
  'maintenance',
  'ehs',
  'engineer',
  'administrator',
] satisfies Role[];

const isReachable = ({ addresses }: TellablePerson): boolean =>
  addresses.push || addresses.email !== null;

export function ladderOf(
  people: readonly TellablePerson[],
  rota: Rota,
  at: EpochMs,
  { station, hazard, priority }: Subject,
): Ladder {
  const callable = people.filter(({ role }) => role !== 'reader');
  const wanting = callable.filter(({ wants }) => wants === undefined || wants.includes(priority));
  const onCall = whoIsOn(rota, at, station, hazard);
  const causes = [...onCall.causes];
  const units = onCall.who.map((name) => unitOf(name, callable, causes));
  const named = units.flat();
  if (rota.entries.length > 0 && onCall.who.length === 0)
    causes.push('The rota says nobody is on call now, so everyone who wants alarms is told.');
  const ofRole = callable.filter(({ role }) => named.some((one) => one.role === role));
  const [first = [], second = []] = units.filter((unit) => unit.length > 0);
  const all = first.length === 0 ? [wanting] : [first, second, ofRole, wanting];
  for (const person of new Set(all.flat()))
    if (!isReachable(person))
      causes.push(`${person.name} has neither a phone nor an e-mail address.`);
  const rungs = adding(all.map((rung) => rung.filter(isReachable)));
  if (rungs.length === 0)
    causes.push('Nobody can be told: no person has a phone or an e-mail address.');
  return { rungs, causes: [...new Set(causes)] };
}

/** A person by id or name, or all of a role; why there is nobody goes into `causes`. */
export function unitOf(
  name: string,
  people: readonly TellablePerson[],
  causes: string[],
  source = 'The rota',
): readonly TellablePerson[] {
  const same = (text: string): boolean => text.toLowerCase() === name.toLowerCase();
  const persons = people.filter((person) => person.id === name || same(person.name));
  if (persons.length > 0) return persons;
  if (roles.some(same)) {
    const all = people.filter(({ role }) => same(role));
    if (all.length === 0) causes.push(`${source} names the role ${name}, which nobody has.`);
    return all;
  }
  causes.push(`${source} names “${name}”, whom nobody here knows.`);
  return [];
}

/** Without those that add nobody to the ones before. */
function adding(rungs: readonly (readonly TellablePerson[])[]): TellablePerson[][] {
  const before = new Set<string>();
  return rungs.flatMap((rung) => {
    const once = [...new Map(rung.map((person) => [person.id, person])).values()];
    const adds = once.some(({ id }) => !before.has(id));
    for (const { id } of once) before.add(id);
    return adds ? [once] : [];
  });
}

/** Those of the rungs `from` to `to`, each once; beyond the top, the top. */
export function onRungs(
  { rungs }: Ladder,
  [from, to]: readonly [from: number, to: number],
): TellablePerson[] {
  const top = rungs.length - 1;
  const found = new Map<string, TellablePerson>();
  for (let i = Math.min(from, top); i <= Math.min(to, top); i += 1)
    for (const person of rungs[i] ?? []) found.set(person.id, person);
  return [...found.values()];
}
