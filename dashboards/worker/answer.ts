/**
 * An acknowledgement from the notification itself, and what became of it.
 *
 * Always true: nothing is kept to be sent later; what the agent did not confirm within 10 s is said
 * not to be sent, and stays on the screen with the button to try again.
 */
import type { Problem, PushNotice } from '../../agent/web/contract.ts';
import { workerWords } from '../text/worker-words.ts';
import { languageOf, type ShownNotice, shownNotice } from './notice.ts';

export const answerWithinMs = 10_000;

export type Ask = (url: string, init: RequestInit) => Promise<Response>;

/** What to show in the notification's place once it was asked for. */
export async function acknowledge(
  notice: PushNotice,
  ask: Ask,
  withinMs = answerWithinMs,
): Promise<ShownNotice> {
  const words = workerWords[languageOf(notice)];
  const path = `/api/alarms/${encodeURIComponent(notice.occurrence ?? '')}/acknowledge`;
  let answer: Response;
  let problem: Problem | null;
  try {
    answer = await ask(path, {
      method: 'POST',
      headers: { accept: 'application/json' },
      credentials: 'same-origin',
      redirect: 'error',
      signal: AbortSignal.timeout(withinMs),
    });
    problem = answer.ok ? null : await problemOf(answer);
  } catch {
    return staying(notice, words.notSent, words.notSentSays);
  }
  if (answer.ok) return quiet(notice, words.acknowledged, words.stopsNothing);
  if (answer.status === 401) return staying(notice, words.refused, words.signIn);
  if (answer.status >= 500) return staying(notice, words.notSent, words.notSentSays);
  return staying(notice, words.refused, problem?.detail ?? '');
}

async function problemOf(answer: Response): Promise<Problem | null> {
  const isProblem = answer.headers.get('content-type')?.startsWith('application/problem+json');
  return isProblem === true ? ((await answer.json()) as Problem) : null;
}

/** In the place of the alarm's notification; gone once it is looked at. */
function quiet(notice: PushNotice, says: string, what: string): ShownNotice {
  const { options } = shownNotice({ ...notice, silent: true, kind: 'answered' });
  return {
    title: `${says} · ${notice.title}`,
    options: { ...options, body: [what, notice.sentence].join('\n') },
  };
}

function staying(notice: PushNotice, says: string, what: string): ShownNotice {
  const { options } = shownNotice(notice);
  return {
    title: `${says} · ${notice.title}`,
    options: {
      ...options,
      body: [what, notice.sentence].filter((line) => line !== '').join('\n'),
      requireInteraction: true,
      renotify: true,
    },
  };
}
