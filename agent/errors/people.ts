/** Errors of people, passwords and certificates. No name of a person and no secret stands in them. */
import type { ErrorEntry } from './entry.ts';

export const peopleErrors = {
  PEOPLE_SIGN_IN_NEEDED: {
    happened: 'Nobody is signed in, or the session or token is over.',
    fix: 'Sign in on the page; a program sends Authorization: Bearer with a token.',
  },
  PEOPLE_SIGN_IN_WRONG: {
    happened: 'Name and password do not belong together.',
    fix: 'Try again. An administrator can send a new link, or forebond user reset on the box.',
  },
  PEOPLE_WAIT: {
    happened: 'There were too many wrong passwords; none is taken for {seconds} s.',
    fix: 'Wait, then try again. Whoever is signed in stays signed in.',
  },
  PEOPLE_SHUT: {
    happened: 'There were so many wrong passwords for this name that none is taken any more.',
    fix: 'An administrator resets this person on the page, or forebond user reset does on the box.',
  },
  PEOPLE_BUSY: {
    happened: 'Too many passwords are being checked at once.',
    fix: 'Try again in a few seconds.',
  },
  PEOPLE_MAY_NOT: {
    happened: 'The role {role} may not do this.',
    fix: 'Ask somebody who may: {roles}.',
  },
  PEOPLE_NOT_BY_TOKEN: {
    happened: 'This cannot be done with a token.',
    fix: 'Sign in on the page as a person, or use the command on the box.',
  },
  PEOPLE_AGAIN_NEEDED: {
    happened: 'This change needs the password once more.',
    fix: 'Give it; it holds for {minutes} min.',
  },
  PEOPLE_PASSWORD_SHORT: {
    happened: 'The password has {chars} characters.',
    fix: 'Use {min} or more. A few words of your own in a row are easy to remember and to type.',
  },
  PEOPLE_PASSWORD_LONG: {
    happened: 'The password has more than {max} characters.',
    fix: 'Use a shorter one.',
  },
  PEOPLE_PASSWORD_KNOWN: {
    happened: 'The password is made of words, rows of keys or repetitions that are tried first.',
    fix: 'Use several words that have nothing to do with each other, with you, or with this site.',
  },
  PEOPLE_INVITATION_UNUSABLE: {
    happened: 'This link has been used already, or its time is over.',
    fix: 'Ask an administrator for a new one. The first link comes anew when the agent is started again.',
  },
  PEOPLE_SETUP_ELSEWHERE: {
    happened: 'The first link is only good on the machine itself.',
    fix: 'Use it there, or start the agent with --setup-from-anywhere.',
  },
  PEOPLE_FIRST_ADMINISTRATOR: {
    happened: 'Nobody is an administrator yet.',
    fix: 'The first to choose a password is an administrator; then this link can be used.',
  },
  PEOPLE_LAST_ADMINISTRATOR: {
    happened: 'This is the last administrator.',
    fix: 'Make somebody else an administrator first, and have them sign in.',
  },
  PEOPLE_NAME_TAKEN: {
    happened: 'There is somebody of this name already.',
    fix: 'Add a second name, or what tells the two apart.',
  },
  PEOPLE_NAME_UNUSABLE: {
    happened: 'A name is needed, of 1 to 100 characters in one line.',
    fix: 'Write the name as people say it.',
  },
  PEOPLE_TOO_MANY: {
    happened: 'There are {max} already, and no more are kept.',
    fix: 'Remove those that are not needed any more.',
  },
  PEOPLE_UNKNOWN: {
    happened: 'There is nobody "{name}".',
    fix: 'forebond user list, or the page, shows who is there.',
  },
  PEOPLE_TIMES_UNUSABLE: {
    happened: 'The site file ends sessions in an order that cannot be.',
    fix: 'Write session_idle of {minutes} min or more, and session_end no shorter than that.',
  },
  PEOPLE_PASSWORD_UNREADABLE: {
    happened: 'No password came on standard input.',
    fix: 'Write it as one line of UTF-8 to standard input.',
  },
  PEOPLE_SESSION_UNKNOWN: {
    happened: 'You are signed in nowhere under "{id}".',
    fix: 'Read your sessions again: it may have ended meanwhile.',
  },
  TOKEN_UNKNOWN: {
    happened: 'There is no token "{id}".',
    fix: 'forebond token list, or the page, shows them.',
  },
  PEOPLE_FILE_BROKEN: {
    happened: '{path} cannot be used: {reason}.',
    fix: 'Take it back from a backup. Without it the agent has no people, and needs the first one anew.',
  },
  PEOPLE_FILE_FAILED: {
    happened: '{path} could not be read or written: {reason}.',
    fix: 'See that the disk has room and that the folder belongs to the agent’s own account.',
  },
  TLS_FILES_UNUSABLE: {
    happened: 'The certificate {path} cannot be used: {reason}.',
    fix: 'Name a certificate and its key in PEM, with --tls-cert and --tls-key; or neither, and the agent makes its own.',
  },
  TLS_AUTHORITY_FAILED: {
    happened: 'The agent’s own certificates in {path} could not be read or written: {reason}.',
    fix: 'See that the disk has room and that the folder belongs to the agent’s own account.',
  },
} as const satisfies Record<string, ErrorEntry>;
