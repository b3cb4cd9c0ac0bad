import { afterEach, describe, expect, test, vi } from 'vitest';
import { limits } from '#agent/limits.ts';
import { full } from './fake-store.ts';
import { scene, startMs } from './scene.ts';

afterEach(() => {
  vi.useRealTimers();
});

/** What is due at once, without letting the clock move. */
const soon = () => vi.advanceTimersByTimeAsync(0);
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);

describe('a message', () => {
  test('is acknowledged after the commit that holds it, before its beat', async () => {
    const { send, story, rows, live } = scene();
    send('t', 20);
    expect(story).toEqual([]);
    await soon();
    expect(story).toEqual(['kept', 'acknowledged 20']);
    // It carries the beat at which it will be judged.
    expect(rows()).toEqual(['20 samples t=20']);
    expect(live.engineNow).toBe(startMs);
    await pass(limits.beatMs);
    expect(live.engineNow).toBe(startMs + limits.beatMs);
  });

  test('shares its commit with those that came together', async () => {
    const { send, story, rows } = scene();
    for (const value of [1, 2, 3]) send('t', value);
    await soon();
    expect(story).toEqual(['kept', 'acknowledged 1', 'acknowledged 2', 'acknowledged 3']);
    expect(rows()).toEqual(['20 samples t=1 t=2 t=3']);
  });

  test('is not acknowledged by a commit of others that comes while it is still open', async () => {
    const { send, story, rows, live } = scene();
    send('t', 20);
    // A look that falls between its arrival and its own commit, as timers may.
    live.tick();
    expect(rows()).toEqual([]);
    expect(story.filter((line) => line.startsWith('acknowledged'))).toEqual([]);
    await soon();
    expect(rows()).toEqual(['20 samples t=20']);
    expect(story.filter((line) => line.startsWith('acknowledged'))).toEqual(['acknowledged 20']);
  });

  test('does not wait for a group that grows without end', () => {
    const { send, story } = scene();
    for (let value = 1; value < limits.groupCommitMessages; value += 1) send('t', value);
    expect(story).toEqual([]);
    send('t', 0);
    expect(story[0]).toBe('kept');
    expect(story).toHaveLength(1 + limits.groupCommitMessages);
  });

  test('with QoS 0 is done at once, and kept within a second', async () => {
    const { send, story, rows, live } = scene();
    live.settle();
    story.length = 0;
    send('t', 20, 0);
    expect(story).toEqual(['acknowledged 20']);
    await pass(limits.lazyCommitMs - limits.beatMs);
    expect(rows()).toEqual([]);
    await pass(2 * limits.beatMs);
    live.tick();
    expect(rows()).toEqual(['20 samples t=20']);
  });
});

test('beyond its bound, what waits for a refusing disk is neither kept nor acknowledged', async () => {
  const { send, story, store, live, rows } = scene();
  store.refusal = full();
  for (let value = 0; value < limits.unacknowledgedMax + 5; value += 1) send('t', value);
  store.refusal = null;
  await pass(2 * limits.commitRetryMs);
  live.tick();
  await soon();
  const acknowledged = story.filter((line) => line.startsWith('acknowledged'));
  expect(acknowledged).toHaveLength(limits.unacknowledgedMax);
  expect(rows().join(' ').split(' t=')).toHaveLength(limits.unacknowledgedMax + 1);
});

describe('a message that says a mark', () => {
  test('is acknowledged once its mark is judged and kept, not before', async () => {
    const { send, story, rows, store } = scene();
    send('scan', 12);
    await soon();
    expect(story).toEqual([]);
    await pass(limits.beatMs);
    expect(story).toEqual(['kept', 'acknowledged 12']);
    expect(rows()).toEqual(['20 command']);
    expect(store.ledger).toMatchObject([
      { type: 'mark', station: 'l/s', mark: 'put', item: '12', at: startMs + 20, by: 'topic:scan' },
    ]);
  });
  test('is not acknowledged while the disk refuses', async () => {
    const { send, story, store, live } = scene();
    store.refusal = full();
    send('scan', 12);
    await pass(limits.beatMs);
    expect(story).toEqual([]);
    store.refusal = null;
    await pass(limits.commitRetryMs);
    live.tick();
    await soon();
    expect(story).toEqual(['kept', 'acknowledged 12']);
  });
  test('counts among those that may wait', async () => {
    const { send, story, store } = scene();
    store.refusal = full();
    for (let i = 0; i < limits.unacknowledgedMax; i += 1) send('scan', 1);
    send('t', 99);
    store.refusal = null;
    await pass(2 * limits.commitRetryMs);
    expect(story).not.toContain('acknowledged 99');
  });
});

describe('a reading that somebody enters', () => {
  test('is kept together with the record of who did, and then answered', async () => {
    const { live, story, rows, store } = scene();
    const entered = live.enter(
      (beatMs, _nowMs, out) => out.push(0, beatMs, beatMs, 21, 0, 0),
      (batch, i) => ({ type: 'reading', value: batch.value[i]!, by: 'anna' }),
    );
    entered.then((kept) => story.push(`answered ${kept}`));
    await pass(limits.beatMs);
    expect(story).toEqual(['kept', 'answered true']);
    expect(rows()).toEqual(['20 samples t=21']);
    expect(store.turns[0]!.ledger).toEqual([{ type: 'reading', value: 21, by: 'anna' }]);
    expect(store.turns[0]!.inputs).toHaveLength(1);
  });
  test('and gave no sample is answered so, and nothing is kept of it', async () => {
    const { live, store } = scene();
    const record = vi.fn();
    expect(await live.enter(() => undefined, record)).toBe(false);
    expect(record).not.toHaveBeenCalled();
    expect(store.ledger).toEqual([]);
  });
});

describe('an alarm', () => {
  test('is in the ledger before anybody is told', async () => {
    const { send, story, store } = scene();
    send('t', 31);
    await pass(limits.beatMs);
    expect(story).toEqual(['kept', 'acknowledged 31', 'kept', 'told raised']);
    expect(store.ledger).toMatchObject([{ type: 'transition', judged: startMs + 20 }]);
  });

  test('is told first where the disk refuses, once, and entered when it can be, marked so', async () => {
    const { send, story, store, live, news } = scene();
    store.refusal = full();
    send('t', 31);
    await pass(limits.beatMs);
    expect(story).toEqual(['told raised before kept']);
    for (let look = 0; look < 30; look += 1) {
      await pass(limits.lookMs);
      live.tick();
    }
    expect(story).toEqual(['told raised before kept']);
    // It is asked about once a second, not at every look.
    expect(store.attempts).toBeLessThan(6);
    store.refusal = null;
    await pass(limits.commitRetryMs);
    live.tick();
    expect(story).toEqual(['told raised before kept', 'kept', 'acknowledged 31']);
    expect(store.ledger).toMatchObject([{ type: 'transition', told_before_kept: true }]);
    expect(news.map(({ kept }) => kept)).toEqual([false]);
    send('t', 20);
    await pass(limits.beatMs);
    expect(story.slice(3)).toEqual(['kept', 'acknowledged 20', 'kept', 'told returned']);
    expect(store.ledger[1]).not.toHaveProperty('told_before_kept');
  });

  test('comes while publishers wait: their messages are judged, not acknowledged', async () => {
    const { send, story, store } = scene();
    store.refusal = full();
    send('t', 20);
    await pass(limits.beatMs);
    send('t', 31);
    await pass(limits.beatMs);
    expect(story).toEqual(['told raised before kept']);
  });
});

describe('a command', () => {
  const acknowledge = {
    kind: 'command',
    verb: 'acknowledge',
    occurrence: `l/s/warm@${startMs + 20}`,
    by: 'anna',
  } as const;

  async function raised() {
    const at = scene();
    at.send('t', 31);
    await pass(limits.beatMs);
    at.story.length = 0;
    const answer = vi.fn();
    return { ...at, answer };
  }

  test('is answered with what it caused, once that is on disk', async () => {
    const { live, story, answer, rows } = await raised();
    live.command(acknowledge).then((effects) => {
      story.push('answered');
      answer(effects);
    });
    await pass(limits.beatMs);
    expect(story).toEqual(['kept', 'told acknowledged', 'answered']);
    expect(answer.mock.calls).toMatchObject([[[{ transition: 'acknowledged', by: 'anna' }]]]);
    expect(rows().at(-1)).toBe('40 command');
  });

  test('is not answered while the disk refuses', async () => {
    const { live, story, answer, store } = await raised();
    store.refusal = full();
    live.command(acknowledge).then(answer);
    await pass(limits.beatMs);
    expect(story).toEqual(['told acknowledged before kept']);
    expect(answer).not.toHaveBeenCalled();
    store.refusal = null;
    await pass(limits.commitRetryMs);
    live.tick();
    await soon();
    expect(answer.mock.calls).toMatchObject([[[{ transition: 'acknowledged' }]]]);
  });

  test('that changes nothing is answered with why', async () => {
    const { live, answer } = await raised();
    live.command({ ...acknowledge, occurrence: 'l/s/warm@7' }).then(answer);
    await pass(limits.beatMs);
    expect(answer.mock.calls).toMatchObject([[[{ kind: 'refused' }]]]);
  });
});

describe('another plan in the middle of a beat', () => {
  test('what came before stands in the log before it; all is judged', async () => {
    const { send, adopt, live, rows, story, store } = scene();
    await pass(3);
    send('t', 31);
    const moment = adopt('two');
    expect(moment - startMs).toBeLessThan(limits.beatMs);
    send('a', 5);
    send('t', 32);
    await pass(limits.beatMs);
    expect(rows()).toEqual(['20 samples t=31', `${moment - startMs} site`, '20 samples a=5 t=32']);
    expect(live.running?.plan.revision).toBe('two');
    expect(story).toContain('told raised');
    expect(story.filter((each) => each.startsWith('acknowledged'))).toHaveLength(3);
    expect(store.ledger).toMatchObject([{ judged: startMs + 20, evidence: { value: 31 } }]);
  });

  test('two changes in one moment share it', async () => {
    const { send, adopt } = scene();
    await pass(3);
    send('t', 20);
    const first = adopt('two');
    expect(adopt('one')).toBe(first);
  });
});

describe('stopping', () => {
  test('judges, keeps and acknowledges what was taken, and takes nothing more', async () => {
    const { send, live, story, rows } = scene();
    send('t', 31);
    live.stop();
    expect(story).toContain('acknowledged 31');
    expect(story).toContain('told raised');
    expect(rows()).toEqual(['20 samples t=31']);
    const { length } = story;
    send('t', 20);
    send('t', 20, 0);
    live.tick();
    await pass(5_000);
    expect(story).toHaveLength(length);
    expect(vi.getTimerCount()).toBe(0);
  });

  test('with the disk refusing acknowledges nothing and says that it was not kept', async () => {
    const { send, live, story, news, store } = scene();
    store.refusal = full();
    const answer = vi.fn();
    send('t', 31);
    live
      .command({
        kind: 'command',
        verb: 'reset',
        occurrence: `l/s/warm@${startMs + 20}`,
        by: 'anna',
      })
      .then(answer);
    live.stop();
    await soon();
    expect(story).toEqual(['told raised before kept']);
    expect(news.every(({ kept }) => !kept)).toBe(true);
    expect(answer).not.toHaveBeenCalled();
  });
});
