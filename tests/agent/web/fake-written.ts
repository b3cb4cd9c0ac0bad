/** What people write down in the small plant of these tests. */
import type { MarkSaid, ReadingEntered, WebPorts } from '#agent/web/ports.ts';
import type { ClockView, MarkView } from '#agent/web/written-contract.ts';
import { now } from './moment.ts';

export const mark: MarkView = {
  id: 'mounts-2/store-1/moved',
  line: 'mounts-2',
  station: 'store-1',
  mark: 'moved',
  what: 'container',
  meaning: 'The container was moved.',
  by_whom: 'whoever moves it',
  topic: null,
  last: { at: now, item: 'D-7', by: 'anna' },
};
const clock: ClockView = {
  rule: 'mounts-2/store-1/shelf-life',
  line: 'mounts-2',
  station: 'store-1',
  mark: 'moved',
  item: 'D-7',
  since: now,
  said: true,
  early: now + 1_000,
  due: now + 2_000,
  severity: 0,
};

export class FakeWritten {
  readonly said: MarkSaid[] = [];
  readonly entered: ReadingEntered[] = [];
  markRefusal: string | null = null;
  readingRefusal: Error | null = null;
  marks: WebPorts['marks'] = (station) => ({
    at: now,
    marks: station === null || station === 'mounts-2/store-1' ? [mark] : [],
    clocks: [clock],
  });
  sayMark: WebPorts['sayMark'] = async (said) => {
    this.said.push(said);
    if (said.mark !== mark.mark) return { outcome: 'unknown' };
    if (this.markRefusal !== null) return { outcome: 'refused', why: this.markRefusal };
    const { item = null, at = now, by } = said;
    const place = { line: 'mounts-2', station: 'store-1', mark: said.mark };
    return { outcome: 'accepted', mark: { ...place, item, at, by } };
  };
  enterReading: WebPorts['enterReading'] = async (entered) => {
    this.entered.push(entered);
    if (this.readingRefusal !== null) throw this.readingRefusal;
    const { signal: id, value, at = now } = entered;
    const quality = { grade: 'good', cause: null } as const;
    return { signal: id, at, value, unit: 'Cel', quality, judged: true };
  };
}
