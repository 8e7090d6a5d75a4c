/** The first place where a text is not JSON as these files use it; `offset` counts characters from 0. */
export interface JsonFault {
  readonly offset: number;
  readonly found: string;
  readonly expected: string;
}

/** Files of parts and fits nest six deep; anything near this is no drawing. */
export const deepestNesting = 32;

/** More numbers, texts and lists than this in one file are refused unread; the vertices allowed need fewer. */
export const mostValues = 2_000_000;

const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const word = /true|false|null/y;
// a quote, a backslash, or anything below the space
const stringEnd = /["\\]|[^ -\uffff]/g;

/**
 * Reads a JSON text (RFC 8259) without keeping anything, and says where it first goes wrong; null when it does not.
 * A key twice in one object is a fault too, since the first value would be lost without a word. One pass, bounded depth.
 */
export function jsonFault(text: string): JsonFault | null {
  const reader = new JsonReader(text);
  try {
    reader.value(0);
    reader.end();
    return null;
  } catch (fault) {
    if (fault instanceof Stop) return fault.fault;
    throw fault;
  }
}

/** A space, a tab, or the end of a line. */
const isBlank = (code: number): boolean => code === 0x20 || code === 0x09 || code === 0x0d || code === 0x0a;

class Stop extends Error {
  readonly fault: JsonFault;
  constructor(fault: JsonFault) {
    super(fault.found);
    this.fault = fault;
  }
}

class JsonReader {
  private offset = 0;
  private values = 0;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  end(): void {
    this.skipBlank();
    if (this.offset < this.text.length) this.stop('the end of the file');
  }

  value(depth: number): void {
    this.skipBlank();
    if (++this.values > mostValues) this.stop(`at most ${mostValues} values in one file`, 'more');
    const next = this.text[this.offset];
    if (next === '{' || next === '[') this.list(next, depth + 1);
    else if (next === '"') this.string();
    else if (!this.skip(number) && !this.skip(word)) this.stop('a value');
  }

  private list(opening: '{' | '[', depth: number): void {
    if (depth > deepestNesting) this.stop(`at most ${deepestNesting} levels of brackets`, 'brackets nested deeper');
    const closing = opening === '{' ? '}' : ']';
    const keys = opening === '{' ? new Set<string>() : null;
    this.offset++;
    this.skipBlank();
    if (this.take(closing)) return;
    do {
      if (keys !== null) this.key(keys);
      this.value(depth);
      this.skipBlank();
    } while (this.take(','));
    if (!this.take(closing)) this.stop(`"," or "${closing}"`);
  }

  private key(keys: Set<string>): void {
    this.skipBlank();
    const start = this.offset;
    if (this.text[start] !== '"') this.stop('a key in double quotes');
    this.string();
    const key = this.text.slice(start, this.offset);
    if (keys.has(key)) {
      this.offset = start;
      this.stop('each key once', `the key ${key} a second time`);
    }
    keys.add(key);
    this.skipBlank();
    if (!this.take(':')) this.stop('":"');
  }

  private string(): void {
    for (this.offset++; ; this.offset++) {
      stringEnd.lastIndex = this.offset;
      const stop = stringEnd.exec(this.text);
      this.offset = stop?.index ?? this.text.length;
      if (this.take('"')) return;
      if (stop?.[0] !== '\\') this.stop('the closing quote of a text');
      this.escape();
    }
  }

  private escape(): void {
    const escaped = /\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/y;
    escaped.lastIndex = this.offset;
    if (!escaped.test(this.text)) this.stop('an escape such as \\n or \\u00e9');
    this.offset = escaped.lastIndex - 1;
  }

  /** By character and not by a pattern: it is asked at every token, and hardly ever finds anything. */
  private skipBlank(): void {
    while (isBlank(this.text.charCodeAt(this.offset))) this.offset++;
  }

  private skip(pattern: RegExp): boolean {
    pattern.lastIndex = this.offset;
    const matched = pattern.test(this.text);
    if (matched) this.offset = pattern.lastIndex;
    return matched;
  }

  private take(character: string): boolean {
    const matched = this.text[this.offset] === character;
    if (matched) this.offset++;
    return matched;
  }

  private stop(expected: string, found = this.here()): never {
    throw new Stop({ offset: this.offset, found, expected });
  }

  private here(): string {
    const next = this.text[this.offset];
    if (next === undefined) return 'the end of the file';
    return next < ' ' ? 'a line break or another control character' : `"${next}"`;
  }
}
