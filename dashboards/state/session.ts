/**
 * Who is signed in, and who else there is by name.
 *
 * Always true: once the agent says that nobody is signed in, nothing of the line is shown until
 * somebody is.
 */
import type { MeView } from '../../agent/web/contract.ts';
import { ownOf } from '../text/lookup.ts';
import { get, onSignedOut } from './api.ts';
import { tellListeners, useTold } from './board.ts';

interface Session {
  /** null until the agent was asked. */
  readonly me: MeView | null;
  /** Somebody was signed in before, here. */
  readonly wasIn: boolean;
  readonly names: Readonly<Record<string, string>>;
}

let session: Session = { me: null, wasIn: false, names: {} };

function write(change: Partial<Session>): void {
  session = { ...session, ...change };
  tellListeners();
}

export const useSession = (): Session => useTold(() => session);

/** Nobody is signed in, and somebody must be. */
export const needsSignIn = ({ me }: Session): boolean => me?.people === true && me.person === null;

export const isSignedOut = (): boolean => needsSignIn(session);

export const mayDo = ({ me }: Session, operation: string): boolean =>
  me === null || me.may.includes(operation);

/** A name by its id; the id where nobody has it any more. */
export const nameOf = (id: string): string => ownOf(session.names, id) ?? id;

export const knownNames = (): Session['names'] => session.names;

export const setNames = (names: Session['names']): void => write({ names });

export function setMe(me: MeView): void {
  write({ me, wasIn: session.wasIn || me.person !== null });
}

/** Throws NoAnswer or Refused. */
export async function loadMe(): Promise<void> {
  setMe(await get<MeView>('/api/me'));
}

export async function loadNames(): Promise<void> {
  const { names } = await get<{ names: Record<string, string> }>('/api/names');
  write({ names });
}

/** A request was refused because nobody is signed in any more. */
export function signedOut(): void {
  const { me } = session;
  if (me === null || me.person !== null)
    write({ me: { people: true, person: null, may: [], ends: null, proved_until: null } });
}

/** Before anything is shown of the line. Where the agent does not answer, the link says so and asks again. */
export async function findWho(): Promise<void> {
  onSignedOut(signedOut);
  await loadMe().catch(() => undefined);
}
