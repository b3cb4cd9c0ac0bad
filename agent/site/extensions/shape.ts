/** What a file of the site's own rules exports, read strictly: kinds that can be used, or why not. */
import { z } from 'zod/mini';
import type { DerivedKind } from '#rules/derive/derived-kind.ts';
import type { RuleKind } from '#rules/kinds/kind.ts';
import { isCanonical } from '#rules/quantity/unit.ts';
import { shown } from './guard.ts';
import { isRecord } from './read-answers.ts';

export interface OwnExports {
  readonly kinds: readonly RuleKind[];
  readonly derived: readonly DerivedKind[];
}

type Report = (problem: string, fix: string) => void;
type Given = Readonly<Record<string, unknown>>;

const nameShape = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
const textCharsMax = 300;

export function readExports(made: unknown, report: Report): OwnExports {
  if (!isRecord(made)) {
    report(`its function gave ${shown(made)}`, 'Give { kinds: [ … ], derived: [ … ] }.');
    return { kinds: [], derived: [] };
  }
  for (const key of Object.keys(made))
    if (key !== 'kinds' && key !== 'derived')
      report(`its function gave ${key}, which nobody asks for`, 'Give kinds and derived alone.');
  return {
    kinds: listOf(made, 'kinds', report).flatMap((each) =>
      isRuleKind(each, report) ? [each] : [],
    ),
    derived: listOf(made, 'derived', report).flatMap((each) =>
      isDerivedKind(each, report) ? [each] : [],
    ),
  };
}

function listOf(made: Given, key: string, report: Report): Given[] {
  const list: unknown = made[key] ?? [];
  if (Array.isArray(list) && list.every(isRecord)) return list;
  report(`${key} is ${shown(list)}`, `Make ${key} a list of kinds, or leave it out.`);
  return [];
}

const ruleParts = {
  must: ['compile', 'begin', 'sample', 'gap', 'shift', 'evidence', 'sentence'],
  may: ['reopen', 'deadline', 'without', 'limits', 'migrate'],
  data: ['name', 'version', 'summary', 'written', 'takes'],
} as const;

function isRuleKind(given: Given, report: Report): given is Given & RuleKind {
  const say = reporting(given, report);
  const sound = [
    isNamed(given, say),
    hasVersion(given, say),
    hasWritten(given, say),
    hasParts(given, ruleParts, say),
    takesSignals(given.takes, say),
  ];
  return sound.every(Boolean);
}

const derivedData = ['name', 'summary', 'inputs', 'unit', 'saidIn', 'digits', 'source', 'range'];
const derivedParts = {
  formula: { must: ['compute'], may: ['result'], data: derivedData },
  settled: { must: ['settled', 'compile'], may: ['result'], data: [...derivedData, 'written'] },
  keeping: {
    must: ['compile', 'begin', 'step', 'gap', 'shift'],
    may: ['result', 'start', 'migrate'],
    data: [...derivedData, 'written', 'version'],
  },
} as const;

function isDerivedKind(given: Given, report: Report): given is Given & DerivedKind {
  const say = reporting(given, report);
  const form = 'compute' in given ? 'formula' : 'step' in given ? 'keeping' : 'settled';
  const sound = [
    isNamed(given, say),
    isText(given.source, 'source', 'where the formula is published, or whose judgement it is', say),
    hasParts(given, derivedParts[form], say),
    form === 'formula' || hasWritten(given, say),
    form !== 'keeping' || hasVersion(given, say),
    hasInputs(given.inputs, say),
    isUnit(given.unit, 'unit', say),
    Number.isInteger(given.digits) && Number(given.digits) >= 0 && Number(given.digits) <= 9
      ? true
      : say(`digits is ${shown(given.digits)}`, 'Say how many decimals it has: 0 to 9.'),
  ];
  return sound.every(Boolean);
}

type Say = (problem: string, fix: string) => false;

function reporting(given: Given, report: Report): Say {
  const name = typeof given.name === 'string' ? given.name.slice(0, 40) : 'a kind without a name';
  return (problem, fix) => {
    report(`${name}: ${problem}`, fix);
    return false;
  };
}

const isNamed = (given: Given, say: Say): boolean =>
  (typeof given.name === 'string' && nameShape.test(given.name) && given.name.length <= 40
    ? true
    : say(`name is ${shown(given.name)}`, 'Write small letters, digits and hyphens.')) &&
  isText(given.summary, 'summary', 'what it judges or gives, in one sentence', say);

const isText = (value: unknown, key: string, what: string, say: Say): boolean =>
  typeof value === 'string' && value.trim() !== '' && value.length <= textCharsMax
    ? true
    : say(`${key} is ${shown(value)}`, `Say ${what}.`);

const hasVersion = ({ version }: Given, say: Say): boolean =>
  Number.isInteger(version) && Number(version) >= 1
    ? true
    : say(`version is ${shown(version)}`, 'Begin with 1, and raise it when its memory changes.');

const hasWritten = ({ written }: Given, say: Say): boolean =>
  written instanceof z.ZodMiniObject
    ? true
    : say(
        `written is ${shown(written)}`,
        'Write forebond.settings({ … }), with nothing in it where it has none.',
      );

interface Parts {
  readonly must: readonly string[];
  readonly may: readonly string[];
  readonly data: readonly string[];
}

function hasParts(given: Given, { must, may, data }: Parts, say: Say): boolean {
  let sound = true;
  for (const part of must)
    if (typeof given[part] !== 'function')
      sound = say(`it has no function ${part}`, `Add ${part}.`);
  for (const [key, value] of Object.entries(given)) {
    if (must.includes(key) || data.includes(key)) continue;
    if (!may.includes(key)) sound = say(`${key} is no part of such a kind`, 'Take it out.');
    else if (value !== undefined && typeof value !== 'function')
      sound = say(`${key} is ${shown(value)}`, 'Make it a function, or leave it out.');
  }
  return sound;
}

function takesSignals(takes: unknown, say: Say): boolean {
  if (takes === undefined) return true;
  const fix = 'Write takes: { least: 2, most: 8, units: "same" }.';
  if (!isRecord(takes)) return say(`takes is ${shown(takes)}`, fix);
  const { least, most, units } = takes;
  const counted =
    Number.isInteger(least) && Number.isInteger(most) && Number(least) >= 1 && Number(most) <= 8;
  const named = units === 'same' || units === 'any' || areUnits(units);
  return counted && Number(least) <= Number(most) && named
    ? true
    : say('takes cannot be read', fix);
}

const areUnits = (units: unknown): boolean =>
  Array.isArray(units) && units.every((unit) => typeof unit === 'string' && isCanonical(unit));

function hasInputs(inputs: unknown, say: Say): boolean {
  const fix = 'Write inputs: [{ name, unit, meaning }], one to eight.';
  if (!Array.isArray(inputs) || inputs.length < 1 || inputs.length > 8)
    return say(`inputs is ${shown(inputs)}`, fix);
  return inputs.every((input: unknown) =>
    isRecord(input) && typeof input.name === 'string' && typeof input.meaning === 'string'
      ? isUnit(input.unit, `the unit of ${input.name}`, say)
      : say('an input lacks its name or meaning', fix),
  );
}

const isUnit = (unit: unknown, key: string, say: Say): boolean =>
  unit === 'any' || (typeof unit === 'string' && isCanonical(unit))
    ? true
    : say(`${key} is ${shown(unit)}`, 'Write a canonical UCUM unit, as Cel, K, bar or 1; or any.');
