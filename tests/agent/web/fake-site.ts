/** What loading a site file and alarm performance answer, made up. */
import type { WebPorts } from '#agent/web/ports.ts';
import { figuresView, guidance } from '#agent/wiring/alarm-load-view.ts';
import { alarmLoad } from '#rules/alarm/alarm-load.ts';
import { FakeWritten } from './fake-written.ts';

export class FakeSite extends FakeWritten {
  reloadSite: WebPorts['reloadSite'] = async () => {
    if (this.siteFileWrong !== null) throw this.siteFileWrong;
    return {
      revision: 'r2',
      changes: [{ path: 'lines.m.room.rules.hot.high', before: '30 Cel', after: '31 Cel' }],
      more: 0,
    };
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
