/**
 * `forebond user add|list|email|reset|remove`: people, on the box itself, with the agent running or not.
 *
 * Always true: a password comes on standard input alone; a link is shown once. A running agent follows
 * at once, and enters the change in the ledger; one that does not run enters it when it starts.
 */
import { type Command, InvalidArgumentError } from 'commander';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { Book, boxId, type Invited, note } from '../people/book.ts';
import { emailPattern, type Role } from '../people/contract.ts';
import { checkPassword } from '../people/password-rules.ts';
import { roles } from '../people/rights.ts';
import type { PersonRow } from '../people/roster.ts';
import { hashPassword } from '../people/secrets.ts';
import { requireFolder } from '../store/folder-use.ts';
import { loopbackOf } from '../web/address.ts';
import { dataOption } from './data-option.ts';

/** What the command needs of the process around it. */
export interface PeopleCliParts {
  readonly print: (line: string) => void;
  /** Standard input to its end, or to `bytesMax`. */
  readonly readInput: (bytesMax: number) => Promise<string>;
  readonly nowMs: () => number;
}

export function roleArgument(text: string): Role {
  const found = roles.find((each) => each === text);
  if (found === undefined) throw new InvalidArgumentError(`write one of ${roles.join(', ')}.`);
  return found;
}

function languageArgument(text: string): 'en' | 'de' {
  if (text !== 'en' && text !== 'de') throw new InvalidArgumentError('write en or de.');
  return text;
}

function nameArgument(text: string): string {
  const name = text.trim();
  if (name === '' || name.length > 100 || /\p{Cc}/u.test(name))
    throw new InvalidArgumentError('write a name of 1 to 100 characters in one line.');
  return name;
}

function emailArgument(text: string): string {
  if (!emailPattern.test(text))
    throw new InvalidArgumentError('write one address, as name@works.example.');
  return text;
}

const emailOrNone = (text: string): string | null => (text === 'none' ? null : emailArgument(text));

interface AddFlags {
  readonly data: string;
  readonly role: Role;
  readonly language: 'en' | 'de';
  readonly email?: string;
  readonly passwordStdin?: boolean;
}

/** Throws PEOPLE_PASSWORD_UNREADABLE and as checkPassword. */
async function passwordGiven(parts: PeopleCliParts, name: string): Promise<string> {
  const text = (await parts.readInput(4 * limits.passwordCharsMax + 2)).replace(/\r?\n$/, '');
  if (text === '' || /[\r\n\uFFFD]/.test(text)) throw new AgentError('PEOPLE_PASSWORD_UNREADABLE');
  checkPassword(text, [name]);
  return hashPassword(text);
}

function setPassword(book: Book, id: string, password: string, nowMs: number): void {
  book.alter(id, note(nowMs, 'joined', id, boxId), (row) => ({
    ...row,
    password,
    invitation: null,
  }));
}

function printLink({ print }: PeopleCliParts, book: Book, { secret, ends }: Invited): void {
  const page = book.now.page ?? 'http://127.0.0.1:8620';
  const until = new Date(ends).toISOString().replace(/\.\d+/, '');
  print(`link ${page}/#/invitation/${secret} (shown this once; good once, until ${until})`);
  const { hostname, port } = new URL(page);
  if (loopbackOf(hostname) === null) return;
  print('it opens on this machine alone: no phone reaches it. For phones run the agent with');
  print(`--http 0.0.0.0:${port} --people --name NAME (it then speaks TLS), and make a new link`);
}

async function add(parts: PeopleCliParts, name: string, flags: AddFlags): Promise<void> {
  requireFolder(flags.data);
  const book = new Book(flags.data);
  const { role, language, email = null } = flags;
  const password = flags.passwordStdin === true ? await passwordGiven(parts, name) : null;
  const invited = book.invite({ name, role, language, email }, boxId, parts.nowMs());
  if (password === null) printLink(parts, book, invited);
  else setPassword(book, invited.person.id, password, parts.nowMs());
  parts.print(`${name} is added as ${role}, with the id ${invited.person.id}`);
}

interface ResetFlags {
  readonly data: string;
  readonly passwordStdin?: boolean;
}

function found(book: Book, name: string): PersonRow {
  const person = book.named(name) ?? book.now.people.find(({ id }) => id === name);
  if (person === undefined) throw new AgentError('PEOPLE_UNKNOWN', { name });
  return person;
}

async function reset(parts: PeopleCliParts, name: string, flags: ResetFlags): Promise<void> {
  requireFolder(flags.data);
  const book = new Book(flags.data);
  const person = found(book, name);
  const password = flags.passwordStdin === true ? await passwordGiven(parts, person.name) : null;
  const invited = book.reset(person.id, boxId, parts.nowMs());
  if (password === null) printLink(parts, book, invited);
  else setPassword(book, person.id, password, parts.nowMs());
  parts.print(`${person.name} is signed out everywhere; the old password is void`);
}

function list({ print, nowMs }: PeopleCliParts, flags: { data: string; json?: boolean }): void {
  requireFolder(flags.data);
  const rows = new Book(flags.data).now.people.map((row) => ({
    ...{ id: row.id, name: row.name, role: row.role, language: row.language, email: row.email },
    joined: row.password !== null,
    invited: row.invitation !== null && row.invitation.ends > nowMs(),
  }));
  if (flags.json === true) {
    print(JSON.stringify(rows));
    return;
  }
  if (rows.length === 0) print('no people');
  const width = Math.max(0, ...rows.map(({ name }) => name.length));
  for (const { id, name, role, email, joined, invited } of rows) {
    const state = joined ? '' : invited ? '  invited' : '  needs a new link';
    print(
      `${name.padEnd(width)}  ${role.padEnd(13)}  ${id}${email === null ? '' : `  ${email}`}${state}`,
    );
  }
}

function emailCommand(user: Command, parts: PeopleCliParts): void {
  user
    .command('email')
    .description('enter where somebody’s messages go by e-mail, or take it away')
    .argument('<name>', 'name or id')
    .argument('<address>', 'the address; none takes it away', emailOrNone)
    .addOption(dataOption('data folder').makeOptionMandatory())
    .action((name: string, email: string | null, flags: { data: string }) => {
      requireFolder(flags.data);
      const book = new Book(flags.data);
      const person = found(book, name);
      book.giveEmail(person.id, email, boxId, parts.nowMs());
      parts.print(
        `${person.name} is ${email === null ? 'not told by e-mail' : `told at ${email}`}`,
      );
    });
}

/** Registers the command; what it throws is told by the program. */
export function userCommand(program: Command, parts: PeopleCliParts): void {
  const user = program.command('user').description('people who may use the page, each with a role');
  const dataFlag = () => dataOption('data folder').makeOptionMandatory();
  user
    .command('add')
    .description('add somebody; prints a link with which they choose a password')
    .argument('<name>', 'name, as people say it', nameArgument)
    .requiredOption('--role <role>', `one of ${roles.join(', ')}`, roleArgument)
    .option('--language <en|de>', 'language of the page and of messages', languageArgument, 'en')
    .option('--email <address>', 'where messages go by e-mail', emailArgument)
    .option('--password-stdin', 'read the password, one line, from standard input')
    .addOption(dataFlag())
    .action((name: string, flags: AddFlags) => add(parts, name, flags));
  user
    .command('list')
    .description('list the people')
    .option('--json', 'print one JSON array')
    .addOption(dataFlag())
    .action((flags: { data: string; json?: boolean }) => list(parts, flags));
  emailCommand(user, parts);
  user
    .command('reset')
    .description('void a password and end all sessions; prints a new link')
    .argument('<name>', 'name or id')
    .option('--password-stdin', 'read the new password, one line, from standard input')
    .addOption(dataFlag())
    .action((name: string, flags: ResetFlags) => reset(parts, name, flags));
  user
    .command('remove')
    .description('remove somebody and forget the name; the ledger keeps the id')
    .argument('<name>', 'name or id')
    .addOption(dataFlag())
    .action((name: string, flags: { data: string }) => {
      requireFolder(flags.data);
      const book = new Book(flags.data);
      const person = found(book, name);
      book.remove(person.id, boxId, parts.nowMs());
      parts.print(`${person.name} is removed and signed out everywhere`);
    });
}
