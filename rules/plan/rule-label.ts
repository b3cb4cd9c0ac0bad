/** A rule's label and what its placeholders print: the site's words over the station's. */

import { ownDoNotInGerman } from '../alarm/label.ts';
import { evidenceFacts, nameFacts, placeholders, placeholdersIn } from '../alarm/placeholders.ts';
import { unsafeWords } from '../alarm/unsafe-words.ts';
import { germanLabel, germanOf } from '../german/all.ts';
import { parseDuration } from '../quantity/duration.ts';
import { parseQuantity, withoutDust } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import { didYouMean } from '../site/nearest.ts';
import { type RuleWritten, signalWords } from '../site/rule-schema.ts';
import type { Bilingual } from '../stations/station.ts';
import type { CardLabel, Fact, LabelTexts } from './card.ts';
import type { Path, Report } from './draft.ts';

export interface LabelSource {
  readonly label: CardLabel;
  readonly facts: Readonly<Record<string, Fact>>;
  /** People can be hurt by what the rule watches: its own texts stay, and the site's are looked at. */
  readonly guards: boolean;
  readonly ofSite?: true;
}

export function compileLabel(
  written: Partial<RuleWritten>,
  { label, facts, guards, ofSite }: LabelSource,
  path: Path,
  report: Report,
): CardLabel {
  const word = written.signal_word ?? label.word;
  if (signalWords.indexOf(word) > signalWords.indexOf(label.word))
    report({
      path: [...path, 'signal_word'],
      problem: `${word} says less than the ${label.word} this rule comes with`,
      fix: `Write ${label.word} or a stronger word, or take signal_word out.`,
    });
  const texts: readonly (readonly [Path, string | undefined])[] = [
    [['sentence'], written.sentence],
    [['consequence'], written.consequence],
    [['caution'], written.caution],
    ...(written.actions ?? []).map((text, i) => [['actions', i], text] as const),
    ...(written.do_not ?? []).map((text, i) => [['do_not', i], text] as const),
  ];
  for (const [key, text] of texts) {
    checkPlaceholders(text ?? '', facts, [...path, ...key], report);
    if (guards) checkAdvice(text ?? '', [...path, ...key], report);
  }
  const keeps = guards && ofSite !== true;
  if (keeps && written.sentence !== undefined) reportSentence(path, report);
  const { do_not: doNot } = written;
  return {
    word,
    ...merged(label, written, keeps),
    german: merged(
      germanLabel(label),
      doNot === undefined ? written : { ...written, do_not: doNot.map(ownDoNotInGerman) },
      keeps,
    ),
  };
}

/** The site's words over the usual ones, or where those stay, behind them. */
function merged(
  label: LabelTexts,
  { sentence: said, consequence, actions, do_not: doNot, caution }: Partial<RuleWritten>,
  keeps: boolean,
): LabelTexts {
  return keeps
    ? {
        sentence: label.sentence,
        consequence: both(label.consequence, consequence),
        steps: [...label.steps, ...(actions ?? [])],
        doNot: [...new Set([...label.doNot, ...(doNot ?? [])])],
        caution: both(label.caution, caution),
      }
    : {
        sentence: said ?? label.sentence,
        consequence: consequence ?? label.consequence,
        steps: actions ?? label.steps,
        doNot: doNot ?? label.doNot,
        caution: caution ?? label.caution,
      };
}

const both = (usual: string, own: string | undefined): string =>
  own === undefined ? usual : `${usual} ${own}`;

function reportSentence(path: Path, report: Report): void {
  report({
    path: [...path, 'sentence'],
    problem:
      'the sentence of this rule says what is wrong and where, and people can be hurt by what it watches; it is not replaced',
    fix: 'Take sentence out; add what people here should know to actions or caution.',
  });
}

/** What is advised may not be what has killed people; what nobody may do names it rightly. */
function checkAdvice(text: string, path: Path, report: Report): void {
  const act = path.includes('do_not') || path.at(-1) === 'consequence' ? null : unsafeWords(text);
  if (act === null) return;
  report({
    path,
    problem: `"${act}" is no advice where people can be hurt`,
    fix: 'Say what can be done from outside and from a safe place; what nobody may do stands under do_not.',
  });
}

function checkPlaceholders(
  text: string,
  facts: Readonly<Record<string, Fact>>,
  path: Path,
  report: Report,
): void {
  const evidence = path.at(-1) === 'sentence' ? evidenceFacts : [];
  const known = [...nameFacts, ...evidence, ...Object.keys(facts)];
  for (const name of placeholdersIn(text)) {
    if (known.includes(name)) continue;
    report({
      path,
      problem: Object.hasOwn(placeholders, name)
        ? `{$${name}} is not known in this text`
        : `there is no placeholder {$${name}}`,
      fix: didYouMean(name, known),
    });
  }
}

/** Written quantities and durations to facts; anything else is text and printed as it is. */
export function compileFacts(
  written: Readonly<Record<string, string | Bilingual>>,
): Readonly<Record<string, Fact>> {
  return Object.fromEntries(
    Object.entries(written).map(([name, text]): [string, Fact] => {
      if (typeof text !== 'string') return [name, { kind: 'text', ...text }];
      const duration = parseDuration(text);
      if (duration.ok) return [name, { kind: 'duration', ms: duration.value }];
      const read = parseQuantity(text);
      if (!read.ok) return [name, textFact(text)];
      const { value, unit } = read.value;
      return [
        name,
        {
          kind: 'quantity',
          value: withoutDust(toCanonical(value, unit)),
          unit: unit.canonical,
          ...(unit.code === unit.canonical ? {} : { written_unit: unit.code }),
        },
      ];
    }),
  );
}

function textFact(text: string): Fact {
  const german = germanOf(text);
  return { kind: 'text', text, ...(german === null ? {} : { german }) };
}
