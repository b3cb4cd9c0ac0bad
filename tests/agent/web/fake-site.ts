/** What loading a site file and alarm performance answer, made up. */
import { AgentError } from '#agent/errors.ts';
import type { WebPorts } from '#agent/web/ports.ts';
import { figuresView, guidance } from '#agent/wiring/alarm-load-view.ts';
import { alarmLoad } from '#rules/alarm/alarm-load.ts';
import { FakeWritten } from './fake-written.ts';
import { now } from './moment.ts';

export class FakeSite extends FakeWritten {
  reloadSite: WebPorts['reloadSite'] = async () => {
    if (this.siteFileWrong !== null) throw this.siteFileWrong;
    return {
      revision: 'r2',
      changes: [{ path: 'lines.m.room.rules.hot.high', before: '30 Cel', after: '31 Cel' }],
      more: 0,
    };
  };
  ownRules: WebPorts['ownRules'] = () => [this.ownRulesFile];
  switchOwnRulesOn: WebPorts['switchOwnRulesOn'] = (file) => {
    if (file !== this.ownRulesFile.file) throw new AgentError('OWN_RULES_UNKNOWN', { file });
    this.ownRulesFile = { ...this.ownRulesFile, state: 'on', why: null, since: null };
    return this.ownRulesFile;
  };
  ownRulesFile: ReturnType<WebPorts['ownRules']>[number] = {
    file: 'rules/creep.ts',
    text: '0123456789abcdef',
    state: 'off',
    why: 'one call took 1003 ms',
    since: now,
    rules: ['mounts-2/store-1/creep'],
    signals: [],
  };
  load: WebPorts['load'] = ({ sinceMs, untilMs, line }) => ({
    since: sinceMs,
    until: untilMs,
    line,
    enough: false,
    figures: figuresView(alarmLoad([], sinceMs, untilMs)),
    guidance,
    shifts: [{ begins_min: 360, told: 0, per_hour: 0 }],
    needed: [{ rule: 'm/room/hot', yes: 1, no: 2 }],
  });
  answerNeeded: WebPorts['answerNeeded'] = async (id) =>
    id === 'x' ? { outcome: 'unknown' } : { outcome: 'accepted' };
  siteFileWrong: Error | null = null;
}
