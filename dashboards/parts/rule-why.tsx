/** Why a rule exists: what it looks for, each number with where it comes from, the time there is to act. */
import type { RuleView } from '../../agent/web/contract.ts';
import { usePreferences } from '../state/preferences.ts';
import { span } from '../text/clock.ts';
import { ruleWords } from '../text/label.ts';
import { ownName } from '../text/names.ts';
import { writtenQuantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';
import { AgentText, Around, here } from './agent-text.tsx';
import { Said } from './said.tsx';

type RuleNumber = NonNullable<RuleView['numbers']>[number];

const markText = (mark: string): string => {
  const words: Readonly<Record<string, string>> = say('mark');
  return words[mark] ?? mark;
};

/** What the site file says, as it says it; numbers as the reader has them. */
function Written({ of: { setting, written } }: { readonly of: RuleNumber }) {
  const name = ownName(setting.replaceAll('_', '-'));
  if (written === null) return <span lang="en">{name}</span>;
  const value = writtenQuantity(setting, String(written));
  const text = /^-?[\d.]+ K$/.test(String(written)) ? say('ofDifference', { value }) : value;
  return /^[\d−-]/.test(text) ? (
    <>
      <span lang="en">{name}</span> {text}
    </>
  ) : (
    <span lang="en">
      {name} {text}
    </span>
  );
}

function basisText({ written, mark }: RuleNumber): string {
  const facts = { mark: markText(mark), note: here };
  return say(written === null ? 'basisNone' : 'basis', facts);
}

const noteText = ({ note, source }: RuleNumber): string =>
  source === null ? note : `${note} (${source})`;

export function RuleWhy({ rule }: { readonly rule: RuleView }) {
  usePreferences();
  return (
    <section>
      <h2>{say('why')}</h2>
      <p>
        <Said words={ruleWords(rule).consequence} />
      </p>
      <p>
        <Around
          sentence={say('whyKind', { summary: here })}
          words={<AgentText text={rule.summary} />}
        />
      </p>
      {rule.respond_ms == null ? null : <p>{say('respond', { span: span(rule.respond_ms) })}</p>}
      <ul class="basis">
        {(rule.numbers ?? []).map((each) => (
          <li key={each.setting}>
            <Written of={each} />
            <Around sentence={basisText(each)} words={<span lang="en">{noteText(each)}</span>} />
          </li>
        ))}
      </ul>
    </section>
  );
}
