/**
 * Every alarm of every station as a person who reads German is told it: filled in from the stations' own
 * scenarios, whole, short enough for a phone, and written down to be read.
 */
import { describe, expect, test } from 'vitest';
import type { Occurrence } from '#agent/alarms/occurrence.ts';
import { pushText } from '#agent/notify/channels/push-text.ts';
import type { PushNotice } from '#agent/web/contract.ts';
import { labelIn } from '#agent/wiring/label-in.ts';
import { tellingWords } from '#agent/wiring/telling-words.ts';
import { alarmView } from '#agent/wiring/views.ts';
import type { Label } from '#rules/alarm/label.ts';
import type { Effect } from '#rules/input.ts';
import { Line, type Scenario } from '../../rules/stations/scenario.ts';
import { scenarios } from '../../rules/stations/scenarios/all.ts';
import { aMessage } from '../notify/messages.ts';

type Raised = Extract<Effect, { kind: 'transition' }>;

const occurrenceOf = (effect: Raised): Occurrence => ({
  id: `${effect.rule}@${effect.judged}`,
  rule: effect.rule,
  signal: effect.signal,
  state: effect.to,
  severity: effect.severity,
  priority: effect.priority,
  raised: effect.judged,
  returned: null,
  closed: null,
  acknowledged: null,
  shelvedUntil: null,
  judgeable: true,
  evidence: effect.evidence,
  evidenceAt: effect.at,
  supersededBy: null,
  steps: [],
});

/** The first alarm of each rule, as it was raised. */
function labelsOf(scenario: Scenario, language: 'en' | 'de'): Map<string, Label> {
  const labels = new Map<string, Label>();
  for (const story of scenario.stories) {
    const line = new Line({ ...scenario, station: story.station ?? scenario.station });
    story.tell(line);
    for (const effect of line.effects) {
      if (effect.kind !== 'transition' || effect.transition !== 'raised') continue;
      const name = effect.rule.slice('l/x/'.length);
      if (labels.has(name)) continue;
      const card = line.site.rules.find(({ id }) => id === effect.rule)!;
      const signal = line.site.plan.signals.find(({ id }) => id === effect.signal) ?? null;
      const { label } = alarmView(occurrenceOf(effect), card, signal, 'Europe/Berlin');
      labels.set(name, labelIn(label, language, 'Europe/Berlin'));
    }
  }
  return labels;
}

const told = scenarios.map((scenario) => [scenario.kind, labelsOf(scenario, 'de')] as const);
const english = scenarios.map((scenario) => [scenario.kind, labelsOf(scenario, 'en')] as const);

test.each(told)('%s: filled in, in German, whole', (_, labels) => {
  for (const [rule, { sentence, consequence, steps, doNot, caution }] of labels) {
    for (const text of [sentence, consequence, caution, ...steps, ...doNot])
      expect(text, rule).not.toMatch(
        /unknown|NaN|undefined|[{}]|\b(the|and|is|are|not|of|for|since|below|above)\b|\d\.\d/,
      );
    expect(sentence, rule).not.toContain('unbekannt');
    for (const text of doNot) expect(text, rule).toMatch(/^\p{Lu}.*\.$/u);
  }
});

describe.each([
  ['de', told],
  ['en', english],
] as const)('on a phone, %s', (language, of) => {
  const bare = JSON.parse(pushText(aMessage()).toString()) as PushNotice;
  test.each(of)('%s: nothing is lost, and nothing comes that is not shown', (_, labels) => {
    for (const [rule, label] of labels) {
      const { deferral, word } = tellingWords[language];
      const title = `${word[label.word]} · l/x`;
      const message = aMessage({ ...label, title, deferral, language });
      const notice = JSON.parse(pushText(message).toString()) as PushNotice;
      expect(Object.keys(notice).toSorted(), rule).toEqual(Object.keys(bare).toSorted());
      expect(notice.do_not, rule).toEqual(label.doNot);
      expect(notice.steps, rule).toEqual(label.steps.slice(0, 3));
      expect(notice.caution, rule).toBe(label.caution);
      expect(notice.consequence, rule).toBe(label.consequence);
    }
  });
});

test('is told as it was when a person last read it', async () => {
  const lines = told.flatMap(([kind, labels]) => [
    '',
    `== ${kind}`,
    ...[...labels].flatMap(([rule, { word, sentence, consequence, steps, doNot, caution }]) => [
      '',
      `${rule}: ${tellingWords.de.word[word]}`,
      sentence,
      consequence,
      ...doNot.map((what) => `- ${what}`),
      caution,
      ...steps.map((step, i) => `${i + 1} ${step}`),
    ]),
  ]);
  const head = [
    'Every alarm as it is told in German, the first of each rule in its station’s scenario. To be read;',
    'written by `npx vitest run tests/agent/wiring/german-label.test.ts -u`.',
  ];
  await expect([...head, ...lines, ''].join('\n')).toMatchFileSnapshot('./german-labels.txt');
});
