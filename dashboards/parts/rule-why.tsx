/** Why a rule exists: what it looks for, each number with where it comes from, the time there is to act. */
import type { RuleView } from '../../agent/web/contract.ts';
import { usePreferences } from '../state/preferences.ts';
import { span } from '../text/clock.ts';
import { ruleConsequence } from '../text/label.ts';
import { ownName } from '../text/names.ts';
import { writtenQuantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';

type RuleNumber = NonNullable<RuleView['numbers']>[number];

const markText = (mark: string): string => {
  const words: Readonly<Record<string, string>> = say('mark');
  return words[mark] ?? mark;
};

const numberText = ({ setting, written, mark, note, source }: RuleNumber): string =>
  say('basis', {
    setting: ownName(setting.replaceAll('_', '-')),
    written: written === null ? say('notGiven') : writtenQuantity(setting, String(written)),
    mark: markText(mark),
    note: source === null ? note : `${note} (${source})`,
  });

export function RuleWhy({ rule }: { readonly rule: RuleView }) {
  usePreferences();
  return (
    <section>
      <h2>{say('why')}</h2>
      <p>{ruleConsequence(rule)}</p>
      <p>{say('whyKind', { summary: rule.summary })}</p>
      {rule.respond_ms == null ? null : <p>{say('respond', { span: span(rule.respond_ms) })}</p>}
      <ul class="basis">
        {(rule.numbers ?? []).map((each) => (
          <li key={each.setting}>{numberText(each)}</li>
        ))}
      </ul>
    </section>
  );
}
