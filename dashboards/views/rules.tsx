/** The rule sheet: the rationalisation of every rule, station by station, to be read and printed. */
import type { RuleView } from '../../agent/web/contract.ts';
import { journey, stationId } from '../judge/journey.ts';
import { NeedText } from '../parts/agent-text.tsx';
import { RuleWhy } from '../parts/rule-why.tsx';
import { Said } from '../parts/said.tsx';
import { useBoard } from '../state/board.ts';
import { gatesText } from '../text/gates.ts';
import { ruleWords } from '../text/label.ts';
import { placeName, ruleName } from '../text/names.ts';
import { say } from '../text/say.ts';

export function RulesPage() {
  const rules = useBoard((board) => board.rules);
  const coverage = useBoard((board) => board.coverage);
  const byStation = Map.groupBy(rules.values(), (rule) => `${rule.line}/${rule.station}`);
  return (
    <article>
      <h1>{say('ruleSheet')}</h1>
      <p>{say('ruleSheetSays')}</p>
      <p>
        <a href="/api/rules.csv">{say('ruleSheetCsv')}</a>
      </p>
      {journey(coverage?.stations ?? []).map((station) => (
        <Station
          key={stationId(station)}
          id={stationId(station)}
          rules={byStation.get(stationId(station)) ?? []}
        />
      ))}
    </article>
  );
}

interface StationProps {
  readonly id: string;
  readonly rules: readonly RuleView[];
}

const Station = ({ id, rules }: StationProps) =>
  rules.length === 0 ? null : (
    <section>
      <h2>{placeName(id)}</h2>
      <p class="hint">{say('ruleCount', { n: rules.length })}</p>
      {rules.map((rule) => (
        <details key={rule.id} class="rule">
          <summary>
            {ruleName(rule.id)}
            <span class="hint">
              {say('ruleFacts', {
                word: say('word')[rule.word],
                priority: [...new Set(rule.priority)]
                  .map((each) => say('priorityWord')[each])
                  .join(', '),
                readiness: say('readiness')[rule.readiness],
              })}
            </span>
          </summary>
          <Traits rule={rule} />
          <ol class="steps">
            {ruleWords(rule).steps.map((step) => (
              <li key={step.text}>
                <Said words={step} />
              </li>
            ))}
          </ol>
          <RuleWhy rule={rule} />
        </details>
      ))}
    </section>
  );

function Traits({ rule }: { readonly rule: RuleView }) {
  const traits = [
    ...(rule.people ? [say('rulePeople')] : []),
    ...(rule.highly_managed ? [say('ruleManaged')] : []),
    ...(rule.latching ? [say('ruleLatching')] : []),
    ...(rule.hold === null ? [] : [say('ruleHolds', { hold: holdText(rule.hold) })]),
    ...(rule.gates.length === 0 ? [] : [say('ruleGate', { gates: gatesText(rule.gates) })]),
  ];
  if (traits.length + rule.needs.length === 0) return null;
  return (
    <ul class="plain-list">
      {traits.map((trait) => (
        <li key={trait}>{trait}</li>
      ))}
      {rule.needs.map((need) => (
        <li key={need}>
          <NeedText need={need} />
        </li>
      ))}
    </ul>
  );
}

/** `rack mounts-1/oven-1` as people say it. */
function holdText(hold: string): string {
  const [what = '', place = ''] = hold.split(' ');
  const words: Readonly<Record<string, string>> = say('holdWhat');
  return say('holdAt', { what: words[what] ?? what, place: placeName(place) });
}
