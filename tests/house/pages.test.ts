import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const house = resolve(import.meta.dirname, '../..');
const page = (name: string): string => readFileSync(join(house, name), 'utf8');
const scripts = Object.keys((JSON.parse(page('package.json')) as { scripts: object }).scripts);

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (name) => {
  it('names only files that are there', () => {
    const linked = [...page(name).matchAll(/\]\(([^)#]+)\)/g)].map(([, file]) => file ?? '');
    const quoted = [...page(name).matchAll(/`((?:src|cli|tests|viewer|profiles)\/[\w./-]+)`/g)].map(
      ([, file]) => file ?? '',
    );
    const missing = [...linked, ...quoted].filter((file) => !existsSync(join(house, file)));
    expect(missing).toEqual([]);
  });

  it('names only scripts that are there', () => {
    const named = [...page(name).matchAll(/npm (?:run )?(ci|test(?::long)?|demo|[a-z]+)/g)].map(
      ([, script]) => script ?? '',
    );
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((script) => script !== 'ci' && !scripts.includes(script))).toEqual([]);
  });
});

describe('the package', () => {
  it('runs nothing of ours on installing it elsewhere', () => {
    expect(scripts.filter((script) => ['preinstall', 'install', 'postinstall'].includes(script))).toEqual([]);
  });

  it('pins every library exactly', () => {
    const { dependencies, devDependencies } = JSON.parse(page('package.json')) as Record<
      string,
      Record<string, string>
    >;
    const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
      ([, wanted]) => !/^\d+\.\d+\.\d+$/.test(wanted),
    );
    expect(loose).toEqual([]);
  });
});
