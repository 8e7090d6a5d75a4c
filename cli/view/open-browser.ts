import { spawn } from 'node:child_process';

/** Opens an address in the default browser; where there is none, nothing happens. */
export function openBrowser(address: string, platform: NodeJS.Platform = process.platform): void {
  const [program, ...args] = openers[platform] ?? ['xdg-open'];
  const child = spawn(program, [...args, address], { detached: true, stdio: 'ignore' });
  child.on('error', () => {});
  child.unref();
}

// start takes a first word in quotes, even an empty one, for a window's title
const openers: Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>> = {
  darwin: ['open'],
  win32: ['cmd', '/c', 'start', ''],
};
