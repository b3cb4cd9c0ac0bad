/** Bounds of people, passwords, sessions and certificates; agent/limits.ts has them all. */
export const peopleLimits = {
  /** Characters of a password; a shorter one is refused (SP 800-63B-4: 15 where it is the only factor). */
  passwordCharsMin: 15,
  /** Characters of a password; a longer one is refused. */
  passwordCharsMax: 256,
  /** Different characters a password must keep once known words and repetitions are taken out. */
  passwordDistinctCharsMin: 6,
  /** Passwords verified at the same time; others wait. */
  passwordVerificationsMax: 1,
  /** Passwords that wait to be verified; further ones are told to try later. */
  passwordVerificationsWaitingMax: 50,
  /** Wrong passwords of one name in a row before each further one costs a wait. */
  signInFreeFailures: 5,
  /** Wrong passwords from one address before each further one costs a wait. */
  signInFreeAddressFailures: 20,
  /** Longest wait after a wrong password. */
  signInWaitMsMax: 15 * 60_000,
  /** Wrong passwords of one name in a row; then none is taken until somebody resets it (SP 800-63B: 100). */
  signInFailuresMax: 100,
  /** An address that sent no wrong password for so long begins anew. */
  signInAddressKeptMs: 24 * 3_600_000,
  /** Names, and addresses, whose wrong passwords are counted; the one tried longest ago makes room. */
  signInCountedMax: 10_000,
  /** A session that nobody used for so long ends. */
  sessionIdleMsDefault: 8 * 3_600_000,
  /** A session ends after so long in any case. */
  sessionAbsoluteMsDefault: 30 * 86_400_000,
  /** Sessions of one person; the one used longest ago makes room. */
  sessionsPerPersonMax: 20,
  /** When a session was last used is written to disk at most this often. */
  sessionSaveMs: 60_000,
  /** A cookie that was just replaced still counts for requests on their way. */
  formerCookieMs: 10_000,
  /** A password given again holds for so long for dangerous changes. */
  provedMs: 5 * 60_000,
  /** The link for the first administrator ends after this. */
  setupLinkMs: 15 * 60_000,
  /** An invitation ends after this. */
  invitationMs: 24 * 3_600_000,
  /** People of one site; no more are kept. */
  personsMax: 500,
  /** Bearer tokens; no more are kept. */
  tokensMax: 200,
  /** A token ends after at most so long. */
  tokenMsMax: 366 * 86_400_000,
  /** Changes of people that wait for an agent to enter them in the ledger; the oldest give way. */
  peopleNotesMax: 1_000,
  /** Another process changing people is waited for so long. */
  peopleFileWaitMs: 2_000,
  /** A change of people that was begun so long ago is taken for dead. */
  peopleFileDeadMs: 30_000,
  /** The same refusal of the same person is entered in the ledger at most this often. */
  refusalToldMs: 3_600_000,
  /** How soon the ledger has what a command on the box changed about people. */
  peopleLookMs: 1_000,
  /** Names under which the page may be reached besides its address. */
  hostNamesMax: 20,
  /** A certificate that the agent made for itself is good for so long. */
  certificateMs: 397 * 86_400_000,
  /** It is made anew when less than this is left. */
  certificateRenewMs: 60 * 86_400_000,
  /** The agent’s own authority is good for so long. */
  authorityMs: 3_650 * 86_400_000,
  /** Certificate files are looked at for a change this often. */
  certificateLookMs: 60_000,
} as const;
