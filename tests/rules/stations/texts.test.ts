/** What the labels may and may not say. A text here is read at night, alone, in front of the machine. */
import { describe, expect, test } from 'vitest';
import {
  evidenceFacts,
  nameFacts,
  placeholders,
  placeholdersIn,
  ruleFacts,
} from '#rules/alarm/placeholders.ts';
import { unsafeWords } from '#rules/alarm/unsafe-words.ts';
import { inGerman } from '#rules/german/all.ts';
import type { CardLabel } from '#rules/plan/card.ts';
import { stationKinds } from '#rules/stations/all.ts';
import {
  lostGuardLabel,
  lostLabel,
  stuckGuardLabel,
  stuckLabel,
} from '#rules/stations/sensor-health.ts';
import type { Given } from '#rules/stations/station.ts';

const given: Given = {
  sheet: null,
  heating: null,
  processTemperature: null,
  residueThickness: null,
  containerSize: null,
  basket: null,
  bound: () => false,
  own: () => null,
  firePlan: { phone: '5555', muster_point: 'gate 2' },
  number: () => '1 Cel',
  confirmed: () => false,
};

interface Text {
  readonly of: string;
  readonly label: CardLabel;
  readonly people: boolean;
  readonly facts: readonly string[];
}
const texts: readonly Text[] = [
  { of: 'lost', label: lostLabel, people: false, facts: [] },
  { of: 'stuck', label: stuckLabel, people: false, facts: [] },
  { of: 'lost, of people', label: lostGuardLabel, people: true, facts: [] },
  { of: 'stuck, of people', label: stuckGuardLabel, people: true, facts: [] },
  ...[...stationKinds.values()].flatMap((kind) =>
    kind.rules.map((rule) => ({
      of: `${kind.name} ${rule.name}`,
      label: rule.label,
      people: kind.hazards.some((hazard) => hazard.id === rule.hazard && hazard.people),
      facts: Object.keys(rule.facts?.(given) ?? {}),
    })),
  ),
];

const advice = (label: CardLabel): string[] => [
  label.sentence ?? '',
  ...label.steps,
  label.caution,
];

describe.each(texts.map((text) => [text.of, text] as const))('%s', (_, text) => {
  test('advises nothing that can hurt', () => {
    for (const line of advice(text.label))
      for (const said of [line, inGerman(line)]) expect(unsafeWords(said)).toBeNull();
  });
  test('uses the signal word for people, and only for people', () => {
    expect(text.label.word !== 'NOTICE').toBe(text.people);
    if (!text.people) expect(text.label.word).toBe('NOTICE');
  });
  test('names nothing it cannot print', () => {
    const known = Object.keys(placeholders);
    const inSteps = [...nameFacts, ...text.facts];
    const inSentence = [...inSteps, ...evidenceFacts];
    expect(text.facts.filter((name) => !known.includes(name))).toEqual([]);
    expect(
      placeholdersIn(text.label.sentence ?? '').filter((n) => !inSentence.includes(n)),
    ).toEqual([]);
    const { consequence, steps, doNot, caution } = text.label;
    for (const line of [consequence, ...steps, ...doNot, caution])
      expect(placeholdersIn(line).filter((name) => !inSteps.includes(name))).toEqual([]);
  });
  test('each do-not is one thing, to be read behind "do not" alone', () => {
    for (const what of text.label.doNot) {
      expect(what).toMatch(/^[a-z]/);
      expect(what).not.toMatch(/[;.]|\balone$/);
    }
  });
  test('gives a consequence, one to three steps and a caution, in whole calm sentences', () => {
    const { sentence, consequence, steps, caution } = text.label;
    expect(steps.length).toBeGreaterThan(0);
    expect(steps.length).toBeLessThanOrEqual(3);
    for (const line of [consequence, ...steps, caution, ...(sentence === null ? [] : [sentence])]) {
      expect(line).toMatch(/^[A-Z{].*\.$/);
      expect(line).not.toContain('!');
    }
  });
});

test('the words forbidden are found where they stand', () => {
  for (const bad of [
    'Open the door.',
    'Look inside.',
    'Scrape it off.',
    'Stop the conveyor.',
    'Just have a peek through the hatch.',
    'Keep the chain halted.',
    'Take the lid off the bin.',
    'Reset the emergency stop.',
    'Pull the rack out by hand.',
    'Use water on it.',
    'Bridge the switch.',
    'Die Tür öffnen.',
    'Kurz hineinsehen.',
    'Den Rückstand abkratzen.',
    'Den Förderer anhalten.',
    'Den Wächter überbrücken.',
    'Mit Wasser löschen.',
    'Den Not-Halt zurücksetzen.',
    'Den Deckel abnehmen.',
    'Hose it down.',
    'Put it out with water.',
    'Remove the guard.',
    'Defeat the interlock.',
    'Crack the door.',
    'Have a look through the hatch.',
    'Hold the conveyor.',
    'Climb into the booth.',
    'Halten Sie den Förderer an.',
    'Kettenförderer anhalten.',
    'Setzen Sie den Not-Halt zurück.',
    'Löschen Sie mit Wasser.',
    'Sieh hinein.',
    'Überbrücke den Schalter.',
    'Die Ofentür aufmachen.',
    'Nicht warten, die Tür öffnen.',
    'Do not wait, open the door.',
  ])
    expect(unsafeWords(bad), bad).not.toBeNull();
  for (const good of [
    'Never open the door.',
    'Do not bridge the switch.',
    'Have a licensed electrician reset the trip.',
    'Only the fire brigade may use water.',
    'Keep clear of the chain until it is switched off.',
    'Die Tür nicht öffnen.',
    'Keine Klappe öffnen.',
    'Öffnen nur durch die Feuerwehr.',
  ])
    expect(unsafeWords(good), good).toBeNull();
});

test('every placeholder belongs to names, facts or evidence, and to one of them', () => {
  const all = [...nameFacts, ...ruleFacts, ...evidenceFacts];
  expect([...all].sort()).toEqual(Object.keys(placeholders).sort());
  expect(new Set(all).size).toBe(all.length);
});
