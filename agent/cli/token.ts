/** `forebond token add|list|remove`: bearer tokens of programs, each with a role and an end. */
import { type Command, InvalidArgumentError } from 'commander';
import { limits } from '../limits.ts';
import { Book, boxId } from '../people/book.ts';
import type { Role } from '../people/contract.ts';
import { roles } from '../people/rights.ts';
import { requireFolder } from '../store/folder-use.ts';
import { dataOption } from './data-option.ts';
import { type PeopleCliParts, roleArgument } from './user.ts';

const dayMs = 86_400_000;
const daysMax = Math.floor(limits.tokenMsMax / dayMs);
const daysDefault = 90;

function daysArgument(text: string): number {
  const days = Number(text);
  if (!Number.isInteger(days) || days < 1 || days > daysMax)
    throw new InvalidArgumentError(`write a whole number of days from 1 to ${daysMax}.`);
  return days;
}

const dayOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);

interface AddFlags {
  readonly data: string;
  readonly role: Role;
  readonly days: number;
}

function list(
  { print, nowMs }: PeopleCliParts,
  { data, json }: { data: string; json?: boolean },
): void {
  requireFolder(data);
  const rows = new Book(data).now.tokens.map(({ hash: _, ...row }) => row);
  if (json === true) {
    print(JSON.stringify(rows));
    return;
  }
  if (rows.length === 0) print('no tokens');
  for (const { id, label, role, ends } of rows) {
    const until = ends > nowMs() ? `until ${dayOf(ends)}` : `ended ${dayOf(ends)}`;
    print(`${id}  ${role.padEnd(13)}  ${until}  ${label}`);
  }
}

/** Registers the command; what it throws is told by the program. */
export function tokenCommand(program: Command, parts: PeopleCliParts): void {
  const token = program.command('token').description('bearer tokens of programs, each with a role');
  const dataFlag = () => dataOption('data folder').makeOptionMandatory();
  token
    .command('add')
    .description('add a token; it is shown once')
    .argument('<label>', 'what it is for')
    .requiredOption('--role <role>', `one of ${roles.join(', ')}`, roleArgument)
    .option('--days <n>', 'good for so many days', daysArgument, daysDefault)
    .addOption(dataFlag())
    .action((label: string, { data, role, days }: AddFlags) => {
      requireFolder(data);
      const given = { label: label.trim().slice(0, 100), role, forMs: days * dayMs };
      const added = new Book(data).addToken(given, boxId, parts.nowMs());
      parts.print(`token ${added.token} (shown this once; only its hash is kept)`);
      parts.print(`${added.id} may do what ${role} may, until ${dayOf(added.ends)}`);
    });
  token
    .command('list')
    .description('list the tokens')
    .option('--json', 'print one JSON array')
    .addOption(dataFlag())
    .action((flags: { data: string; json?: boolean }) => list(parts, flags));
  token
    .command('remove')
    .description('end a token')
    .argument('<id>', 'its id, as listed')
    .addOption(dataFlag())
    .action((id: string, { data }: { data: string }) => {
      requireFolder(data);
      new Book(data).removeToken(id, boxId, parts.nowMs());
      parts.print(`token ${id} is good no more`);
    });
}
