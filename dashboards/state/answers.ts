/** Where the answers to an alarm or a hold go. */
const alarm = (occurrence: string, verb: string): string =>
  `/api/alarms/${encodeURIComponent(occurrence)}/${verb}`;

export const acknowledgePath = (occurrence: string): string => alarm(occurrence, 'acknowledge');
export const shelvePath = (occurrence: string): string => alarm(occurrence, 'shelve');
export const unshelvePath = (occurrence: string): string => alarm(occurrence, 'unshelve');
export const passOnPath = (occurrence: string): string => alarm(occurrence, 'pass-on');
/** An occurrence, or a rule. */
export const outOfServicePath = (id: string): string => alarm(id, 'out-of-service');
export const returnToServicePath = (id: string): string => alarm(id, 'return-to-service');
export const resetPath = (occurrence: string): string => alarm(occurrence, 'reset');
export const neededPath = (occurrence: string): string => alarm(occurrence, 'needed');
export const marksPath = '/api/marks';
export const readingsPath = '/api/readings';
export const holdsPath = '/api/holds';
export const liftPath = (hold: string): string => `/api/holds/${encodeURIComponent(hold)}/lift`;
