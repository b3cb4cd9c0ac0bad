/** A station's marks: those its kind knows, those the site adds, and the topics that say them. */
import type { MarkWritten } from '../site/mark-schema.ts';
import { didYouMean } from '../site/nearest.ts';
import type { StationWritten } from '../site/schema.ts';
import type { StationKind } from '../stations/station.ts';
import type { MarkBinding, MarkCard } from './card.ts';
import { byId, type MarkDraft, type Path, type Report } from './draft.ts';
import { topicProblem, wildcardLevels } from './topic.ts';

export function stationMarks(
  station: string,
  kind: StationKind,
  written: StationWritten,
  path: Path,
  report: Report,
): ReadonlyMap<string, MarkDraft> {
  const marks = new Map<string, MarkDraft>();
  const words = written.marks ?? {};
  for (const { name, what, meaning, byWhom } of kind.marks ?? [])
    marks.set(name, { id: `${station}/${name}`, name, what, meaning, byWhom, said: null });
  for (const [name, own] of Object.entries(words)) {
    const at = [...path, 'marks', name];
    const known = marks.get(name);
    const said = topicOf(own, at, report);
    if (known !== undefined) {
      reportFixed(name, own, at, report);
      marks.set(name, { ...known, byWhom: own.by_whom ?? known.byWhom, said });
      continue;
    }
    const mark = ownMark(station, name, own, said, [...marks.keys()], at, report);
    if (mark !== null) marks.set(name, mark);
  }
  const signals = { ...written.signals, ...written.derived };
  for (const name of marks.keys())
    if (Object.hasOwn(signals, name))
      report({
        path: [...path, 'signals', name],
        problem: `"${name}" is a mark of this station already`,
        fix: 'Give the signal another name.',
        atKey: true,
      });
  return marks;
}

/** What the kind says of its marks is not the site's to change. */
function reportFixed(name: string, own: MarkWritten, path: Path, report: Report): void {
  for (const key of ['what', 'meaning'] as const)
    if (own[key] !== undefined)
      report({
        path: [...path, key],
        problem: `${name} is a mark the station kind knows, with a ${key} of its own`,
        fix: `Take ${key} out, or give the mark another name to make it your own.`,
      });
}

function ownMark(
  station: string,
  name: string,
  own: MarkWritten,
  said: MarkDraft['said'],
  known: readonly string[],
  path: Path,
  report: Report,
): MarkDraft | null {
  const { what, meaning, by_whom: byWhom } = own;
  if (what === undefined && meaning === undefined && known.length > 0) {
    report({
      path,
      problem: `this station has no mark "${name}"`,
      fix: `${didYouMean(name, known)} A mark of your own needs what and meaning.`,
      atKey: true,
    });
    return null;
  }
  for (const [key, fix] of [
    ['what', 'Say what it happens to: rack, container, lot, shot; or none for the place itself.'],
    ['meaning', 'Say in a sentence what happened.'],
  ] as const)
    if (own[key] === undefined)
      report({ path: [...path, key], problem: `the mark "${name}" has no ${key}`, fix });
  if (what === undefined || meaning === undefined) return null;
  return {
    id: `${station}/${name}`,
    name,
    what: what === 'none' ? null : what,
    meaning,
    byWhom: byWhom ?? 'whoever does it',
    said,
  };
}

function topicOf(own: MarkWritten, path: Path, report: Report): MarkDraft['said'] {
  const { topic, payload = { kind: 'plain' } } = own;
  if (topic === undefined) {
    if (own.payload !== undefined)
      report({
        path: [...path, 'payload'],
        problem: 'a payload without a topic says nothing',
        fix: 'Give the mark its topic, or take payload out.',
      });
    return null;
  }
  const bad =
    topicProblem(topic) ??
    (wildcardLevels(topic).length > 0
      ? {
          problem: 'the topic of a mark has no +',
          fix: 'Let the payload name the item, and bind one topic.',
        }
      : null);
  if (bad === null) return { topic, payload };
  report({ path: [...path, 'topic'], ...bad });
  return null;
}

/** What people see of the marks of all stations, in the order of their ids. */
export const markCards = (
  stations: readonly { readonly id: string; readonly marks: ReadonlyMap<string, MarkDraft> }[],
): readonly MarkCard[] =>
  stations
    .flatMap(({ id: station, marks }) =>
      [...marks.values()].map(({ id, name, what, meaning, byWhom, said }) => ({
        id,
        station,
        name,
        what,
        meaning,
        byWhom,
        topic: said?.topic ?? null,
      })),
    )
    .sort(byId);

export const markBindings = (
  stations: readonly { readonly id: string; readonly marks: ReadonlyMap<string, MarkDraft> }[],
): readonly MarkBinding[] =>
  stations.flatMap(({ id: station, marks }) =>
    [...marks.values()].flatMap(({ name, what, said }) =>
      said === null ? [] : [{ station, mark: name, what, ...said }],
    ),
  );
