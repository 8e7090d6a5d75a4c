/** What the browser keeps on this machine under a name; null where it keeps nothing. */
export function keptText(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** Keeps a text where the browser keeps anything; null takes it back. Elsewhere it holds as long as the page is open. */
export function keepText(name: string, text: string | null): void {
  try {
    if (text === null) localStorage.removeItem(name);
    else localStorage.setItem(name, text);
  } catch {
    // it may keep nothing, or no more
  }
}
