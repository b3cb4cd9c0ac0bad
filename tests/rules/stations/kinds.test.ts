/** A station kind hangs together: its rules judge signals it knows, its hazards are watched. */
import { describe, expect, test } from 'vitest';
import { derivedKinds } from '#rules/derive/derived.ts';
import { settingsSchema } from '#rules/derive/derived-kind.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import { settingNames } from '#rules/plan/rule-settings.ts';
import { parseDuration } from '#rules/quantity/duration.ts';
import { parseQuantity } from '#rules/quantity/quantity.ts';
import { unitOf } from '#rules/quantity/unit.ts';
import { isName } from '#rules/site/name.ts';
import { stationKinds } from '#rules/stations/all.ts';

describe.each([...stationKinds])('%s', (name, kind) => {
  const signals = [...kind.signals, ...kind.derived].map((signal) => signal.name);
  test('is listed under its own name, and all its names are names', () => {
    expect(kind.name).toBe(name);
    const names = [...signals, ...kind.rules.map((r) => r.name), ...kind.hazards.map((h) => h.id)];
    expect(names.filter((each) => !isName(each))).toEqual([]);
  });
  test('no signal and no rule has the name of another', () => {
    expect(new Set(signals).size).toBe(signals.length);
    expect(new Set(kind.rules.map((rule) => rule.name)).size).toBe(kind.rules.length);
  });
  test('rules judge signals it knows, by kinds there are, for hazards it names', () => {
    for (const rule of kind.rules) {
      expect(ruleKinds.has(rule.kind)).toBe(true);
      expect(signals).toEqual(expect.arrayContaining([...rule.signals]));
      const gates = [rule.gate ?? []].flat();
      expect(signals).toEqual(expect.arrayContaining(gates.map((gate) => gate.signal)));
      expect(kind.hazards.map((hazard) => hazard.id)).toContain(rule.hazard);
      expect(parseDuration(rule.respond).ok).toBe(true);
      if (rule.alike !== undefined)
        expect(kind.rules.map((other) => other.name)).toContain(rule.alike.rule);
    }
  });
  test('every hazard has a rule or a hand check, never neither', () => {
    for (const hazard of kind.hazards)
      expect(kind.rules.some((rule) => rule.hazard === hazard.id)).toBe(hazard.byHand === null);
  });
  test('units, ranges and resolutions of its signals are of one quantity', () => {
    for (const signal of kind.signals) {
      const unit = unitOf(signal.unit);
      const ends = signal.range.map((end) => parseQuantity(end));
      expect(Number.isInteger(Math.log10(signal.resolution))).toBe(true);
      for (const end of ends)
        expect(end.ok && end.value.unit.dimension, signal.name).toBe(unit?.dimension);
      if (signal.stuckAfter !== null) expect(parseDuration(signal.stuckAfter).ok).toBe(true);
    }
  });
  test('derived signals have the inputs of their kind, in its order, but for optional ones', () => {
    for (const derived of kind.derived) {
      const inputs = derivedKinds.get(derived.kind)?.inputs ?? [];
      const given = Object.keys(derived.inputs);
      const wanted = inputs.filter(({ name, optional }) => !optional || given.includes(name));
      expect(given).toEqual(wanted.map((input) => input.name));
      expect(signals).toEqual(expect.arrayContaining(Object.values(derived.inputs)));
    }
  });
  test('numbers of derived signals are settings of their kind, and marks are of the station', () => {
    for (const { name, kind: of, numbers = [], startsOn = [] } of kind.derived) {
      const written = settingsSchema(derivedKinds.get(of)!);
      const known = written === null ? [] : settingNames({ written });
      expect(known, name).toEqual(expect.arrayContaining(numbers.map(({ setting }) => setting)));
      const needed = numbers.filter((number) => number.value === null && !number.optional);
      for (const number of needed) expect(number.needs, name).toBeTruthy();
      const marks = (kind.marks ?? []).map((mark) => mark.name);
      expect(marks, name).toEqual(expect.arrayContaining([...startsOn]));
    }
  });
});
