/** Coming in and going: after each the page begins anew, so that nothing of one person stays for the next. */
import type { MeView } from '../../agent/web/contract.ts';
import { post, Refused } from './api.ts';
import type { CommandState } from './command.ts';
import { forget } from './kept.ts';
import { setMe } from './session.ts';

export const refusal = (error: unknown): CommandState =>
  error instanceof Refused
    ? { kind: 'refused', why: error.problem.detail, fix: error.problem.fix }
    : { kind: 'no-answer' };

/** Reads all of the page anew, at its first place. */
function begin(): void {
  location.hash = '#/';
  location.reload();
}

/** Throws Refused or NoAnswer, as all of these. */
export async function signIn(name: string, password: string): Promise<void> {
  await post<MeView>('/api/session', { name, password });
  begin();
}

export async function accept(given: object): Promise<void> {
  await post<MeView>('/api/invitation/accept', given);
  begin();
}

export async function signOut(everywhere: boolean): Promise<void> {
  await post(everywhere ? '/api/session/end-all' : '/api/session/end', {});
  await forget();
  begin();
}

export async function proveAgain(password: string): Promise<void> {
  setMe(await post<MeView>('/api/session/again', { password }));
}

export async function changePassword(current: string, next: string): Promise<void> {
  setMe(await post<MeView>('/api/me/password', { current, next }));
}
