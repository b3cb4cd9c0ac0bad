/**
 * What was heard, as the beginning of a site file: sound as it stands, to be gone through by hand.
 * Each guessed unit carries its reason; what nobody could guess says so.
 */
import { unitOf } from '#rules/quantity/unit.ts';
import { isName, nameLengthMax } from '#rules/site/name.ts';
import { questionsInFile } from './before-you-fit.ts';
import { type Guess, guessOf } from './guess.ts';
import type { HeardTopic, HeardValue } from './topic-book.ts';

/** The guess at one value of a topic. */
export const guessAt = ({ topic, look }: HeardTopic, value: HeardValue): Guess | null =>
  guessOf({
    ...value,
    topic,
    saidUnit: look.values.length === 1 ? (look.unit?.text ?? null) : null,
  });

const slug = (text: string): string => {
  const name = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, nameLengthMax)
    .replace(/^-|-$/g, '');
  return isName(name) ? name : 'unnamed';
};

/** `name`, or with a number behind it where it is taken. */
function free(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  for (let n = 2; ; n += 1) {
    const numbered = `${name.slice(0, nameLengthMax - 6)}-${n}`;
    if (!taken.has(numbered)) return numbered;
  }
}

/** The rhythm people would write: what was heard, rounded up to a usual step. */
function rhythm(everyS: number): string {
  const steps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1_800, 3_600];
  const step = steps.find((each) => each >= everyS * 0.95) ?? Math.ceil(everyS / 3_600) * 3_600;
  return step % 3_600 === 0
    ? `${step / 3_600} h`
    : step % 60 === 0
      ? `${step / 60} min`
      : `${step} s`;
}

function placeOf(topic: string): { line: string; station: string; rest: string } {
  const levels = topic.split('/').filter((level) => level !== '');
  const [first = 'unnamed', second, ...others] = levels;
  if (second === undefined) return { line: 'line-1', station: 'unsorted', rest: first };
  if (others.length === 0) return { line: 'line-1', station: slug(first), rest: second };
  return { line: slug(first), station: slug(second), rest: others.join('-') };
}

function payloadText({ look }: HeardTopic, pointer: string): string {
  if (look.kind === 'plain') return '{ kind: plain }';
  const parts = [`kind: json`, `value: ${JSON.stringify(pointer)}`];
  if (look.timePointer !== null) parts.push(`time: ${JSON.stringify(look.timePointer)}`);
  // A unit that is no UCUM code would be refused with every message: it goes to `unit` below.
  if (look.unit !== null && look.values.length === 1 && unitOf(look.unit.text) !== null)
    parts.push(`unit: ${JSON.stringify(look.unit.pointer)}`);
  if (look.qualityPointer !== null) parts.push(`quality: ${JSON.stringify(look.qualityPointer)}`);
  return `{ ${parts.join(', ')} }`;
}

function signalLines(heard: HeardTopic, value: HeardValue, name: string): string[] {
  return [
    `        ${name}:`,
    `          topic: ${JSON.stringify(heard.topic)}`,
    `          payload: ${payloadText(heard, value.pointer)}`,
    ...unitLines(guessAt(heard, value)),
    '          resolution: none # a power of ten, once you know the sensor',
    ...(heard.everyS === null ? [] : [`          expect_every: ${rhythm(heard.everyS)}`]),
  ];
}

/** A unit with its reason; or the question, with every unit that would fit, to keep one of. */
function unitLines(guess: Guess | null): string[] {
  const line = (unit: string, why: string): string =>
    `          unit: ${JSON.stringify(unit)} # ${oneLine(why)}`;
  if (guess === null) return [line('1', 'not known: ask, or read the data sheet')];
  if (guess.unit !== null) return [line(guess.unit, guess.why)];
  const { candidates, quantity, why } = guess;
  return [
    `          # Which unit? ${oneLine(`${quantity}: ${why} ${candidates.join(' or ')}`)}. Ask, or read the`,
    '          # data sheet; keep one of these instead of unit: "1", or write another:',
    ...candidates.map((unit) => `          #   unit: ${JSON.stringify(unit)}`),
    line('1', 'not known yet: see above'),
  ];
}

/** A comment ends with its line. */
const oneLine = (text: string): string => text.replace(/\p{Cc}/gu, ' ');

/** The lines of the file; null where nothing was heard that a signal could be made of. */
export function stubLines(topics: readonly HeardTopic[]): readonly string[] | null {
  const lines = new Map<string, Map<string, Map<string, string[]>>>();
  for (const heard of topics) {
    for (const value of heard.values) {
      const { line, station, rest } = placeOf(heard.topic);
      const stations = entry(lines, line, () => new Map<string, Map<string, string[]>>());
      const signals = entry(stations, station, () => new Map<string, string[]>());
      const wanted = heard.values.length === 1 ? rest : `${rest}-${value.pointer}`;
      const name = free(slug(wanted), new Set(signals.keys()));
      signals.set(name, signalLines(heard, value, name));
    }
  }
  if (lines.size === 0) return null;
  return [
    ...questionsInFile,
    'site: my-works',
    'timezone: Etc/UTC # yours, as Europe/Vienna',
    'lines:',
    ...[...lines].flatMap(([line, stations]) => [
      `  ${line}:`,
      ...[...stations].flatMap(([station, signals]) => [
        `    ${station}:`,
        '      kind: custom # or adhesive-store, drum-mixer …: docs/stations.md',
        '      signals:',
        ...[...signals.values()].flat(),
      ]),
    ]),
  ];
}

function entry<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = make();
  map.set(key, made);
  return made;
}
