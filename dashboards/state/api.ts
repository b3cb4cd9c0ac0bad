/**
 * Asking the agent: JSON in, JSON out, every failure one kind of error with words for a person.
 */
import type { Problem } from '../../agent/web/contract.ts';

/** Called where the agent says that nobody is signed in. */
let tellSignedOut = (): void => undefined;
export function onSignedOut(tell: () => void): void {
  tellSignedOut = tell;
}

/** The agent refused, and says why and what to do. */
export class Refused extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.detail);
    this.problem = problem;
  }
}

/** No answer came: no link, or none in time. */
export class NoAnswer extends Error {}

const answerWithinMs = 10_000;

async function request(path: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(path, { ...init, signal: AbortSignal.timeout(answerWithinMs) });
  } catch (error) {
    throw new NoAnswer('no answer', { cause: error });
  }
}

function refused(problem: Problem): Refused {
  if (problem.code === 'PEOPLE_SIGN_IN_NEEDED') tellSignedOut();
  return new Refused(problem);
}

async function readAnswer<T>(answer: Response): Promise<T> {
  let body: unknown;
  try {
    body = await answer.json();
  } catch (error) {
    throw new NoAnswer('the answer broke off', { cause: error });
  }
  const isProblem = answer.headers.get('content-type')?.startsWith('application/problem+json');
  if (isProblem) throw refused(body as Problem);
  return body as T;
}

/** Throws Refused or NoAnswer; NoAnswer after 10 s. */
export const get = async <T>(path: string): Promise<T> =>
  readAnswer<T>(await request(path, { headers: { accept: 'application/json' } }));

/** Any other request with a body. Throws Refused or NoAnswer. */
export const ask = async <T>(method: string, path: string, body: object): Promise<T> =>
  readAnswer<T>(
    await request(path, {
      method,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    }),
  );

/** Sends a command; it is on disk when this resolves. Throws Refused or NoAnswer. */
export const post = async <T>(path: string, body?: object): Promise<T> =>
  readAnswer<T>(
    await request(path, {
      method: 'POST',
      ...(body === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    }),
  );
