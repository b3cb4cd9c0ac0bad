/** A rule's settings: the site's first, then the material sheet's, then the station's own. */
import { z } from 'zod/mini';
import type { RuleKind } from '../kinds/kind.ts';
import { problemsOf } from '../site/issue.ts';
import { didYouMean } from '../site/nearest.ts';
import { type RuleWritten, ruleFieldNames } from '../site/rule-schema.ts';
import type { Basis, Given, TemplateNumber } from '../stations/station.ts';
import type { CardSetting } from './card.ts';
import type { Path, Report } from './draft.ts';

export interface SettingsDraft {
  readonly settings: Readonly<Record<string, unknown>>;
  readonly card: readonly CardSetting[];
  readonly missing: readonly string[];
  /** Settings that nobody gave; the kind may want them. */
  readonly absent: readonly string[];
  readonly unconfirmed: readonly string[];
  /** What would make it say more, although it is armed. */
  readonly wanted: readonly string[];
}

const bySite: Basis = { mark: 'SITE', note: 'set in the site file', source: null };

/** Names of the settings a kind takes. */
export const settingNames = (kind: Pick<RuleKind, 'written'>): readonly string[] =>
  kind.written instanceof z.ZodMiniObject ? Object.keys(kind.written.shape) : [];

/** The written fields that are settings of the rule's kind. */
export const ownSettings = (written: RuleWritten | undefined): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    Object.entries(written ?? {}).filter(([key]) => !ruleFieldNames.includes(key)),
  );

/** Where a setting was written; the rule's own place for one that nobody wrote. */
export type PathOf = (key: string) => Path;

/** Reports what the kind does not know or cannot read, but for what is `absent`; true where all is well. */
export function checkSettings(
  kind: Pick<RuleKind, 'name' | 'written'>,
  { settings, absent }: Pick<SettingsDraft, 'settings' | 'absent'>,
  pathOf: PathOf,
  report: Report,
  fields: readonly string[] = ruleFieldNames,
): boolean {
  const known = settingNames(kind);
  let sound = true;
  for (const problem of problemsOf(kind.written, settings)) {
    const key = String(problem.path[0] ?? '');
    if (absent.includes(key)) continue;
    sound = false;
    const path = [...pathOf(key), ...problem.path];
    if (problem.atKey === true && !known.includes(key))
      report({
        ...problem,
        path,
        problem: `"${key}" is no setting of ${kind.name}`,
        fix: didYouMean(key, [...known, ...fields]),
      });
    else report({ ...problem, path });
  }
  return sound;
}

/** `own` has been checked. Numbers of the template that nobody gave are named in `missing`. */
export function draftSettings(
  numbers: readonly TemplateNumber[],
  fixed: Readonly<Record<string, boolean>>,
  own: Readonly<Record<string, unknown>>,
  given: Given,
): SettingsDraft {
  const { sheet } = given;
  const settings: Record<string, unknown> = { ...fixed };
  const card: CardSetting[] = [];
  const missing: string[] = [];
  const absent: string[] = [];
  const unconfirmed: string[] = [];
  const wanted: string[] = [];
  for (const number of numbers) {
    if (Object.hasOwn(own, number.setting)) continue;
    const fromSheet = sheet === null ? null : (number.fromSheet?.(sheet, given) ?? null);
    const followed = fromSheet === null ? (number.follows?.(given) ?? null) : null;
    const written = fromSheet ?? followed?.written ?? number.value;
    if (written !== null) settings[number.setting] = written;
    else absent.push(number.setting);
    const confirmed = fromSheet !== null || (followed?.confirmed ?? number.confirm === undefined);
    const instead = [own, settings].some((each) => Object.hasOwn(each, number.unless ?? ''));
    if (written === null && instead) continue;
    const needs = number.needs ?? `${number.setting}`;
    if (written === null && number.optional === true) {
      if (number.needs !== undefined) wanted.push(needs);
    } else if (written === null) missing.push(needs);
    else if (!confirmed && !unconfirmed.includes(needs)) unconfirmed.push(needs);
    card.push({
      setting: number.setting,
      written,
      basis:
        sheet !== null && fromSheet !== null
          ? { mark: 'DS', note: `material sheet ${sheet.name}`, source: sheet.source }
          : (followed?.basis ?? number.basis),
      confirmed,
    });
  }
  for (const [setting, written] of Object.entries(own)) {
    settings[setting] = written;
    const number = numbers.find((each) => each.setting === setting);
    const basis = number?.ownBasis?.(given) ?? bySite;
    card.push({ setting, written: printable(written), basis, confirmed: true });
  }
  return { settings, card, missing, absent, unconfirmed, wanted };
}

const printable = (value: unknown): string | number | boolean =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? value
    : JSON.stringify(value);
