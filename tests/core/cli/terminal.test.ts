import { afterEach, describe, expect, it, vi } from 'vitest';
import { print, printJson, printVerdictFirst, say } from '../../../cli/terminal.ts';

const written = (act: () => void): string => {
  const chunks: string[] = [];
  for (const stream of [process.stdout, process.stderr]) {
    vi.spyOn(stream, 'write').mockImplementation((chunk) => chunks.push(String(chunk)) > 0);
  }
  act();
  return chunks.join('');
};

afterEach(() => vi.restoreAllMocks());

describe('writing to the terminal', () => {
  const smuggled = 'a\u001b[2Jb\u009b31mc\r\u0007';

  it('no control character of a file reaches it', () => {
    expect(written(() => print(smuggled))).toBe('a·[2Jb·31mc··\n');
    expect(written(() => say(smuggled))).toBe('a·[2Jb·31mc··\n');
    expect(written(() => printVerdictFirst(`FOULS at home: ${smuggled}`, 'fouls'))).toMatch(/a·\[2Jb·31mc··\n$/);
  });

  it('JSON keeps them, escaped', () => {
    const text = written(() => printJson({ name: smuggled }));
    expect(text).not.toMatch(/[^\P{Cc}\n]/u);
    expect(JSON.parse(text)).toEqual({ name: smuggled });
  });
});
