/**
 * Who may do what: one table, every operation of the interface named once.
 *
 * Always true: what is not in it nobody may do, save whoever sits at the machine itself while
 * there are no people.
 */
import type { Role } from './contract.ts';

export const roles: readonly Role[] = [
  'reader',
  'operator',
  'maintenance',
  'ehs',
  'engineer',
  'administrator',
];

/**
 * `anyone`: also who is not signed in. `near`: anyone at the machine itself, and who is signed in.
 * `person`: everybody signed in, of themselves. Else the roles that may.
 */
export type Right = 'anyone' | 'near' | 'person' | readonly Role[];

const everyRole = roles;
/** Those who stand at the line and answer for it. */
const hands: readonly Role[] = ['operator', 'maintenance', 'ehs', 'engineer', 'administrator'];
/** Those who take sensors and rules out for work, and bring them back. */
const mending: readonly Role[] = ['maintenance', 'ehs', 'engineer', 'administrator'];
/** Those who decide about parts and limits. */
const deciding: readonly Role[] = ['ehs', 'engineer', 'administrator'];
/** Those who close what is highly managed, or take it out of service while it stands. */
export const guarding: readonly Role[] = ['ehs', 'administrator'];
const setting: readonly Role[] = ['engineer', 'administrator'];
const administrator: readonly Role[] = ['administrator'];

/** By the name of the operation, as /api/openapi.json has it. */
export const rights: Readonly<Record<string, Right>> = {
  // looking
  readHealth: 'near',
  readMetrics: everyRole,
  describe: everyRole,
  readSite: everyRole,
  listSignals: everyRole,
  readSeries: everyRole,
  listRefusedMessages: everyRole,
  listAlarms: everyRole,
  listHolds: everyRole,
  listPutAside: everyRole,
  listMarks: everyRole,
  listRuns: everyRole,
  readRun: everyRole,
  readCoverage: everyRole,
  listRules: everyRole,
  readRuleSheet: everyRole,
  readPerformance: everyRole,
  readTelling: everyRole,
  listWaitingMessages: everyRole,
  listOwnRules: everyRole,
  listen: everyRole,
  // answering
  acknowledgeAlarm: hands,
  passOnAlarm: hands,
  shelveAlarm: hands,
  unshelveAlarm: hands,
  resetAlarm: hands,
  removeAlarmFromService: mending,
  returnAlarmToService: mending,
  answerNeeded: hands,
  setHold: hands,
  liftHold: deciding,
  sayMark: hands,
  enterReading: hands,
  // setting
  reloadSite: setting,
  switchOwnRulesOn: setting,
  // signing in, and of oneself
  readMe: 'anyone',
  signIn: 'anyone',
  readInvitation: 'anyone',
  acceptInvitation: 'anyone',
  readAuthority: 'anyone',
  signOut: 'person',
  signOutEverywhere: 'person',
  proveAgain: 'person',
  changePassword: 'person',
  changeMe: 'person',
  listMySessions: 'person',
  endMySession: 'person',
  testTelling: 'person',
  readPushKey: 'person',
  subscribePush: 'person',
  unsubscribePush: 'person',
  testPush: 'person',
  listNames: everyRole,
  // people and tokens
  listPeople: administrator,
  invitePerson: administrator,
  changeEmail: administrator,
  changeRole: administrator,
  resetPerson: administrator,
  removePerson: administrator,
  listTokens: administrator,
  addToken: administrator,
  removeToken: administrator,
};

/** Changes for which the password is asked once more; no token may make them. */
export const dangerous: ReadonlySet<string> = new Set([
  'reloadSite',
  'invitePerson',
  'changeEmail',
  'changeRole',
  'resetPerson',
  'removePerson',
  'addToken',
  'removeToken',
]);

export const rolesOf = (operation: string): readonly Role[] => {
  const right = rights[operation];
  if (right === undefined) return [];
  return typeof right === 'string' ? everyRole : right;
};
