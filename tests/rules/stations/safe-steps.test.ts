/**
 * Acts a step may bid only once something has been made safe: what must stand before them, in the
 * same step or an earlier one. Over every text of the catalogue.
 */
import { expect, test } from 'vitest';
import type { CardLabel } from '#rules/plan/card.ts';
import { stationKinds } from '#rules/stations/all.ts';
import {
  lostGuardLabel,
  lostLabel,
  stuckGuardLabel,
  stuckLabel,
} from '#rules/stations/sensor-health.ts';

const catalogue: readonly (readonly [string, CardLabel])[] = [
  ['sensor lost', lostLabel],
  ['sensor stuck', stuckLabel],
  ['sensor lost, of people', lostGuardLabel],
  ['sensor stuck, of people', stuckGuardLabel],
  ...[...stationKinds.values()].flatMap((kind) =>
    kind.rules.map((rule) => [`${kind.name} ${rule.name}`, rule.label] as const),
  ),
];

interface Act {
  readonly name: string;
  readonly act: RegExp;
  /** Each must stand before the act. */
  readonly first: readonly RegExp[];
  /** Or one of these behind it, in the same step. */
  readonly unless?: RegExp;
  /** Only of these texts; all where absent. */
  readonly of?: RegExp;
}

const acts: readonly Act[] = [
  {
    name: 'no hand into a hot oven: a probe is put in cold',
    act: /\b(second|third|another) probes?\b|\bprobe\b.*\b(beside|same place)/i,
    first: [/\bcold\b/i, /\b(isolated|locked)\b/i],
    of: /^(drying-oven|primer-pre-bake|residue|sensor) /,
  },
  {
    name: 'no reading by hand where the place may be the hazard',
    act: /\bby hand\b|\bhand instrument\b|\bat the same places?\b/i,
    first: [/\b(second sensor|own display)\b/i],
    of: /^(drying-oven|primer-pre-bake|residue|sensor) /,
  },
  {
    name: 'a probe is fitted to a part outside the oven',
    act: /\bprobes (welded|drilled|fitted)/i,
    first: [/\boutside the oven\b/i],
  },
  {
    name: 'no skimming while racks come and the hoist is free',
    act: /\bskim/i,
    first: [
      /\brack\b.*\b(out|finish)/i,
      /\bhoist\b.*\b(parked|locked)\b/i,
      /\bpaddle\b/i,
      /may\b/i,
    ],
    of: /^dip-tank /,
  },
  {
    name: 'no hand into a mould of a press that can close',
    act: /\bcontact probe\b|\btake the inserts out\b/i,
    first: [/\bpress\b.*\bsafe\b/i],
    of: /^press /,
  },
  {
    name: 'nothing under pressure is taken apart or handled',
    act: /\b(the )?element\b.*\b(changed|in its place)|\b(clean|change)( or change)? the caps?\b|\bnozzle\b.*\bwear\b|\bcap\b.*\bchanged\b/i,
    first: [/\b(vented|depressurised)\b/i],
    of: /^(dip-tank|compressed-air|spray-booth (atomising|flush|tip|filter)|preparation)/,
    unless: /\bvented\b/i,
  },
  {
    name: 'filters of the booth are seen to with the fan locked out',
    act: /\beach filter\b|\bfilters changed\b/i,
    first: [/\bfan\b.*\blocked out\b/i],
    of: /^spray-booth /,
  },
  {
    name: 'a drum is changed with its agitator locked out',
    act: /\bchange the drum\b/i,
    first: [/\blocked out\b/i],
    of: /^drum-mixer /,
  },
  {
    name: 'a conveyor is restarted by somebody who may, with nobody at it',
    act: /\brestarts? (the conveyor|it)\b/i,
    first: [/\b(may|authorised)\b/i],
  },
];

/** What of the act's conditions does not stand before it. */
function missing({ act, first, unless }: Act, steps: readonly string[]): string[] {
  return steps.flatMap((step, i) => {
    const found = act.exec(step);
    if (found === null) return [];
    if (unless?.test(step)) return [];
    const before = [...steps.slice(0, i), step.slice(0, found.index + found[0].length)].join(' ');
    return first.filter((one) => !one.test(before)).map((one) => `${one} before “${step}”`);
  });
}

for (const act of acts)
  test(act.name, () => {
    const all = catalogue.filter(([of]) => act.of?.test(of) ?? true);
    expect(all.flatMap(([of, { steps }]) => missing(act, steps).map((m) => `${of}: ${m}`))).toEqual(
      [],
    );
  });

test('each act is bidden somewhere, or is one that was bidden once', () => {
  const once = ['no reading by hand where the place may be the hazard'];
  const unbidden = acts.filter(
    ({ act, of }) =>
      !catalogue.some(
        ([name, { steps }]) => (of?.test(name) ?? true) && steps.some((step) => act.test(step)),
      ),
  );
  expect(unbidden.map(({ name }) => name).filter((name) => !once.includes(name))).toEqual([]);
});

test('an unsafe step is found', () => {
  const said = (name: RegExp, ...steps: string[]): number =>
    missing(acts.find((act) => name.test(act.name)) as Act, steps).length;
  expect(said(/hot oven/, 'Compare the sensor with a second probe at the same place.')).toBe(2);
  expect(said(/skimming/, 'Skim it; let it settle before any density is read.')).toBe(4);
  expect(said(/by hand/, 'Compare it with a hand instrument at the same place.')).toBe(1);
  expect(said(/press that can close/, 'Measure the cavity with a contact probe.')).toBe(1);
});

test('no loaded conveyor is stopped for a bath', () => {
  for (const [of, { steps }] of catalogue)
    if (steps.some((step) => /\bskim/i.test(step)))
      expect(steps.join(' '), of).toMatch(/\bis not stopped inside an oven\b/);
});
