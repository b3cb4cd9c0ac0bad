/** Commands, flags, routes and their fields as the code describes them. */
import { Command, type Option } from 'commander';
import { checkCommand } from '#agent/cli/check.ts';
import { demoCommand } from '#agent/cli/demo.ts';
import { deviceCommand } from '#agent/cli/device.ts';
import { exportCommand } from '#agent/cli/export.ts';
import { ledgerCommand } from '#agent/cli/ledger.ts';
import { listenCommand } from '#agent/cli/listen.ts';
import { replayCommand } from '#agent/cli/replay.ts';
import { runCommand } from '#agent/cli/run.ts';
import { tokenCommand } from '#agent/cli/token.ts';
import { userCommand } from '#agent/cli/user.ts';
import { openApi } from '#agent/web/openapi.ts';
import type { PeoplePorts } from '#agent/web/people-ports.ts';
import type { Route } from '#agent/web/route.ts';
import { alarmRoutes } from '#agent/web/routes/alarms.ts';
import { asideRoutes } from '#agent/web/routes/aside.ts';
import { coverageRoutes } from '#agent/web/routes/coverage.ts';
import { healthRoutes } from '#agent/web/routes/health.ts';
import { holdRoutes } from '#agent/web/routes/holds.ts';
import { invitationRoutes } from '#agent/web/routes/invitations.ts';
import { metricsRoutes } from '#agent/web/routes/metrics.ts';
import { ownRulesRoutes } from '#agent/web/routes/own-rules.ts';
import { ownSessionRoutes } from '#agent/web/routes/own-sessions.ts';
import { peopleRoutes } from '#agent/web/routes/people.ts';
import { performanceRoutes } from '#agent/web/routes/performance.ts';
import { pushRoutes } from '#agent/web/routes/push.ts';
import { refusedRoutes } from '#agent/web/routes/refused.ts';
import { runRoutes } from '#agent/web/routes/runs.ts';
import { sessionRoutes } from '#agent/web/routes/session.ts';
import { signalRoutes } from '#agent/web/routes/signals.ts';
import { siteRoutes } from '#agent/web/routes/site.ts';
import { streamRoutes } from '#agent/web/routes/stream.ts';
import { tellingRoutes } from '#agent/web/routes/telling.ts';
import { writtenRoutes } from '#agent/web/routes/written.ts';
import { Stream } from '#agent/web/stream.ts';
import { FakePorts } from '../agent/web/fake-ports.ts';
import type { Word } from './words.ts';

const never = (): never => {
  throw new Error('the words of a command are read, never run');
};

/** Every command as the command line has it, nested ones by their whole name. */
export function commands(): Command[] {
  const program = new Command('forebond');
  const parts = { print: never, complain: never, setExitCode: never, siteOrExit: never };
  runCommand(program, parts);
  demoCommand(program, parts);
  listenCommand(program, parts);
  checkCommand(program, { readSite: never, print: never, setExitCode: never });
  replayCommand(program, parts);
  exportCommand(program, { defaultFolder: 'data', setExitCode: never });
  ledgerCommand(program, {
    verify: never,
    archive: never,
    verifyArchive: never,
    defaultFolder: 'data',
    print: never,
    setExitCode: never,
  });
  deviceCommand(program, { print: never, complain: never, setExitCode: never, readInput: never });
  userCommand(program, { print: never, readInput: never, nowMs: never });
  tokenCommand(program, { print: never, readInput: never, nowMs: never });
  return program.commands.flatMap((each) => [each, ...each.commands]);
}

export const commandName = (command: Command): string =>
  command.parent === null || command.parent.name() === 'forebond'
    ? command.name()
    : `${command.parent.name()} ${command.name()}`;

export const flags = (): Word[] =>
  commands().flatMap((command) =>
    command.options.map((option: Option) => ({
      word: `${commandName(command)} ${option.long ?? option.flags}`,
      meaning: option.description === '' ? null : option.description,
    })),
  );

const neverAsked = {} as PeoplePorts;

/** By the file that makes them, so that a test can see that none was left out. */
export function routesByFile(): Readonly<Record<string, readonly Route[]>> {
  const ports = new FakePorts();
  return {
    alarms: alarmRoutes(ports),
    coverage: coverageRoutes(ports),
    health: healthRoutes(ports),
    aside: asideRoutes(ports),
    holds: holdRoutes(ports),
    metrics: metricsRoutes(() => []),
    push: pushRoutes({ key: never, subscribe: never, unsubscribe: never, test: never }),
    refused: refusedRoutes(ports),
    runs: runRoutes(ports),
    signals: signalRoutes(ports),
    site: siteRoutes(ports),
    stream: streamRoutes(new Stream(ports, never)),
    performance: performanceRoutes(ports),
    telling: tellingRoutes({ telling: never, waitingMessages: never, testTelling: never }),
    'own-rules': ownRulesRoutes(ports),
    'own-sessions': ownSessionRoutes({ people: neverAsked, giveCookie: never }),
    session: sessionRoutes({ people: neverAsked, giveCookie: never }),
    invitations: invitationRoutes({ people: neverAsked, giveCookie: never }),
    people: peopleRoutes({ people: neverAsked, forOthers: never }),
    written: writtenRoutes(ports),
  };
}

export const routes = (): Word[] =>
  Object.values(routesByFile())
    .flat()
    .map(({ spec }) => ({ word: `${spec.method} ${spec.url}`, meaning: spec.summary }));

interface Described {
  readonly description?: string;
}
/** The fields whose meaning their name does not tell: those that the description explains. */
export function routeFields(): Word[] {
  const { components } = openApi([], '0') as {
    readonly components: {
      readonly schemas: Readonly<
        Record<string, { readonly properties?: Readonly<Record<string, Described>> }>
      >;
    };
  };
  return Object.entries(components.schemas).flatMap(([name, { properties = {} }]) =>
    Object.entries(properties).flatMap(([field, { description }]) =>
      description === undefined ? [] : [{ word: `${name}.${field}`, meaning: description }],
    ),
  );
}
