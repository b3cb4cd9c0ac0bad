import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { projectFiles, readText } from '../tidy/source.ts';

interface Service {
  readonly build: { readonly context: string; readonly dockerfile: string };
  readonly network_mode: string;
  readonly [setting: string]: unknown;
}

const dockerfile = readText('agent/Dockerfile');
const stages = dockerfile.split(/^FROM /m).slice(1);
const last = stages.at(-1)!;
const { services } = parse(readText('docker-compose.yml')) as {
  services: Readonly<Record<string, Service>>;
};

describe('the image', () => {
  test('runs as a user without rights, who owns the data folder alone', () => {
    expect(last).toMatch(/^USER node$/m);
    expect(last).toMatch(/install -d -o node -g node -m 0700 \/data/);
    expect(last.indexOf('install -d')).toBeLessThan(last.indexOf('VOLUME /data'));
  });
  test('says when it is ill', () => expect(last).toMatch(/^HEALTHCHECK .*\n.*\/api\/health/m));
  test('holds the build and what it needs to run, not the sources', () => {
    const copied = [...last.matchAll(/^COPY --from=build \/app\/(\S+)/gm)].map((match) => match[1]);
    expect(copied).toEqual(['package.json', 'node_modules', 'dist']);
    expect(dockerfile).toContain('npm prune --omit=dev');
  });
  test('is built from files that exist and that .dockerignore lets through', () => {
    const allowed = readText('.dockerignore')
      .split('\n')
      .filter((line) => line.startsWith('!'))
      .map((line) => line.slice(1));
    const copied = [...stages[0]!.matchAll(/^COPY (.+) \S+$/gm)].flatMap((match) =>
      match[1]!.split(' '),
    );
    expect(copied.length).toBeGreaterThan(5);
    expect(copied.filter((name) => !allowed.includes(name))).toEqual([]);
    const missing = copied.filter(
      (name) => !projectFiles.some((path) => path === name || path.startsWith(`${name}/`)),
    );
    expect(missing).toEqual([]);
  });
});

describe('docker-compose.yml', () => {
  test('starts the agent and nothing else', () => expect(Object.keys(services)).toEqual(['agent']));
  test('gives it no more rights than it needs', () => {
    expect(services.agent).toMatchObject({
      read_only: true,
      cap_drop: ['ALL'],
      security_opt: ['no-new-privileges:true'],
      tmpfs: ['/tmp'],
      restart: 'unless-stopped',
      init: true,
    });
  });
  test('builds the image of this repository', () => {
    expect(services.agent!.build).toEqual({ context: '.', dockerfile: 'agent/Dockerfile' });
  });
});
