/** The types that people copy fit what the agent hands out and takes. */
import { expect, expectTypeOf, test } from 'vitest';
import { offered } from '#agent/site/extensions/offered.ts';
import { ownKindsOf } from '#agent/site/extensions/own-kinds.ts';
import type { DerivedNow, FormulaKind, KeepingKind } from '#rules/derive/derived-kind.ts';
import type { DerivedSettingsReader } from '#rules/derive/settings-reader.ts';
import type * as inside from '#rules/kinds/kind.ts';
import type { SettingsReader } from '#rules/kinds/settings.ts';
import type * as own from '../../../../docs/examples/own-rules/rules/forebond.d.ts';
import makeOwn from '../../../../docs/examples/own-rules/rules/short-cycle.ts';

test('what is handed over is what the types say', () => {
  expectTypeOf(offered).toExtend<own.Forebond>();
  expectTypeOf<SettingsReader>().toExtend<own.RuleSettingsReader>();
  expectTypeOf<DerivedSettingsReader>().toExtend<own.DerivedSettingsReader>();
  expectTypeOf<inside.Reading>().toExtend<own.Reading>();
  expectTypeOf<inside.Timer>().toExtend<own.Timer>();
  expectTypeOf<DerivedNow>().toExtend<own.DerivedNow>();
  const handed: readonly (keyof own.Forebond)[] = [
    ...(['settings', 'quantity', 'duration', 'number', 'flag', 'word', 'optional'] as const),
    'quality',
  ];
  expect(Object.keys(offered).sort()).toEqual([...handed].sort());
});

test('what is given back is what the engine takes', () => {
  type Memory = { value: number };
  expectTypeOf<own.Evidence>().toExtend<inside.Evidence>();
  expectTypeOf<Omit<own.RuleKind<object, Memory>, 'written'>>().toExtend<
    Omit<inside.RuleKind<object, Memory>, 'written'>
  >();
  expectTypeOf<own.Formula>().toExtend<FormulaKind>();
  expectTypeOf<Omit<own.Keeping<object, Memory>, 'written'>>().toExtend<
    Omit<KeepingKind<object, Memory>, 'written'>
  >();
  // What the agent may say through a rule, a rule of the site's own may say too.
  expect(makeOwn(offered).kinds).toHaveLength(1);
  expect(ownKindsOf({}).problems).toEqual([]);
});
