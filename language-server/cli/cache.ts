/**
 * Results of earlier runs, so that a file is checked again only when it, or something it uses, is another one. One text
 * file in a folder of its own: the key of the program, a sum of all that follows, then an entry a line, each with its
 * own sum. Where the sum of all is right, nothing more is summed up; where it is not, an entry that is damaged counts as
 * not there. The file is replaced in one go, so several runs at once do no harm; what the last one writes holds. Nothing
 * here is ever needed: without it everything is checked, with the same result.
 *
 * A file is known by its content. Its size, time and number on the disk save the reading where they are as before and
 * the time is older than the cache itself; a file written in the same moment as the cache is read again.
 */
import { mkdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readText } from './read.ts';
import { type Failure, refusedWriting, writeText } from './replace.ts';
import { quickSumOf, sumOf } from './sum.ts';

/** Two seconds (in ms): what the coarsest file systems in use round times to. */
const COARSE = 2_000;

/** Goes up when the form of the entries changes. */
const FORM = 3;

interface Entry {
  path: string;
  stamp: string;
  hash: string;
  /** What the house has agreed on for it, summed up. */
  house: string;
  /** What was read for it besides: names and hashes; an empty hash: it was not there. */
  uses: [string, string][];
  result: unknown;
}

/** What was read of the file, as it was when it was read. */
interface Store {
  entries: Map<string, Entry>;
  /** The lines that the entries stand in, sum and all: what is as it was need not be written anew. */
  lines: Map<Entry, string>;
  /** Of the file itself; undefined where it could not be had. */
  stamp: string | undefined;
  /** In ms. */
  writtenAt: number;
  /** Some of it is damaged, or all of it is of another form. */
  damaged: boolean;
}

/** How a file lies on the disk: size, time of its last change and number, and that time by itself in ms. */
interface Stamp {
  readonly text: string;
  readonly time: number;
}

export class ResultCache {
  private readonly store: Store;
  private readonly fresh = new Map<string, Entry>();
  private readonly hashes = new Map<string, string>();
  private readonly stamps = new Map<string, Stamp | undefined>();
  private readonly houses = new Map<string, string>();
  private readonly file: string;
  private readonly key: string;
  /** This run knows something that is not kept yet. */
  private changed: boolean;

  /** Results of another version of the program are not taken. */
  constructor(folder: string, version: string) {
    this.file = join(folder, 'results');
    this.key = sumOf(`${FORM} ${version}`);
    this.store = storeIn(this.file, this.key);
    this.changed = this.store.damaged;
  }

  /**
   * The result of an earlier run for exactly this file, what it uses and what the house has agreed on for it; undefined
   * where there is none.
   */
  result(path: string, house: string): unknown {
    const entry = this.store.entries.get(path);
    if (!entry || entry.house !== this.houseSum(house) || this.hashOf(path) !== entry.hash) return undefined;
    if (entry.uses.some(([used, hash]) => this.hashOf(used) !== hash)) return undefined;
    const stamp = this.stampOf(path)?.text ?? '';
    if (stamp !== entry.stamp) {
      this.fresh.set(path, { ...entry, stamp });
      this.changed = true;
    }
    return entry.result;
  }

  /** Remembers a result together with everything that was read for it. */
  keep(path: string, house: string, uses: readonly string[], result: unknown): void {
    const stamp = this.stampOf(path)?.text;
    if (stamp === undefined) return;
    this.changed = true;
    const used = uses.filter((one) => one !== path).map((one): [string, string] => [one, this.hashOf(one)]);
    this.fresh.set(path, {
      path,
      stamp,
      hash: this.hashOf(path),
      house: this.houseSum(house),
      uses: used,
      result,
    });
  }

  /** Writes what this run knows, and what others know of files that this run did not look at. */
  save(): Failure | undefined {
    try {
      mkdirSync(join(this.file, '..'), { recursive: true });
    } catch (error) {
      const { reason } = refusedWriting(error as NodeJS.ErrnoException);
      return { reason, remedy: 'Name another folder with --cache.' };
    }
    if (!this.changed) return undefined;
    // Another run may have written since.
    const asRead = this.store.stamp !== undefined && stampOf(this.file)?.text === this.store.stamp;
    const { entries, lines: written } = asRead ? this.store : storeIn(this.file, this.key);
    const lines: string[] = [];
    const add = (entry: Entry) => {
      const known = written.get(entry);
      if (known !== undefined) {
        lines.push(known);
        return;
      }
      const text = JSON.stringify(entry);
      lines.push(`${sumOf(text)} ${text}`);
    };
    for (const [path, entry] of entries) add(this.fresh.get(path) ?? entry);
    for (const [path, entry] of this.fresh) if (!entries.has(path)) add(entry);
    const text = `${lines.join('\n')}\n`;
    const sum = quickSumOf(Buffer.from(text));
    // Half a file, after a cut in power, is seen by its sum: nobody waits for the disk.
    return writeText(this.file, `${this.key}\n${sum}\n${text}`, { lasting: false });
  }

  /** The hash of a file's content; empty where it cannot be had. */
  private hashOf(path: string): string {
    const known = this.hashes.get(path);
    if (known !== undefined) return known;
    const hash = this.unread(path) ?? readHash(path);
    this.hashes.set(path, hash);
    return hash;
  }

  /** The hash that is known without reading. */
  private unread(path: string): string | undefined {
    const entry = this.store.entries.get(path);
    const stamp = entry && this.stampOf(path);
    if (!entry || stamp === undefined || stamp.text !== entry.stamp) return undefined;
    return stamp.time + COARSE < this.store.writtenAt ? entry.hash : undefined;
  }

  /** Asked once: the stamp of a file is older than what is read of it, never younger. */
  private stampOf(path: string): Stamp | undefined {
    const known = this.stamps.get(path);
    if (known !== undefined || this.stamps.has(path)) return known;
    const stamp = stampOf(path);
    this.stamps.set(path, stamp);
    return stamp;
  }

  /** Most files have the same house. */
  private houseSum(house: string): string {
    const known = this.houses.get(house) ?? sumOf(house);
    this.houses.set(house, known);
    return known;
  }
}

const LINE_END = 0x0a;

function storeIn(file: string, key: string): Store {
  const store: Store = {
    entries: new Map(),
    lines: new Map(),
    stamp: undefined,
    writtenAt: 0,
    damaged: false,
  };
  let bytes: Buffer;
  try {
    const stamp = stampOf(file);
    bytes = readFileSync(file);
    store.stamp = stamp?.text;
    store.writtenAt = statSync(file).mtimeMs;
  } catch {
    return store;
  }
  store.damaged = true;
  const keyEnd = bytes.indexOf(LINE_END);
  const sumEnd = bytes.indexOf(LINE_END, keyEnd + 1);
  if (keyEnd < 0 || sumEnd < 0 || bytes.toString('latin1', 0, keyEnd) !== key) return store;
  const rest = bytes.subarray(sumEnd + 1);
  const whole = quickSumOf(rest) === bytes.toString('latin1', keyEnd + 1, sumEnd);
  for (const line of rest.toString('utf8').split('\n')) {
    const entry = entryOf(line, whole);
    if (!entry) continue;
    store.entries.set(entry.path, entry);
    store.lines.set(entry, line);
  }
  store.damaged = !whole;
  return store;
}

/** `trusted`: the sum of the whole file is right. */
function entryOf(line: string, trusted: boolean): Entry | undefined {
  const blank = line.indexOf(' ');
  if (blank < 0) return undefined;
  const text = line.slice(blank + 1);
  if (!trusted && line.slice(0, blank) !== sumOf(text)) return undefined;
  try {
    // Its sum is right, so this program wrote it, in this form.
    return JSON.parse(text) as Entry;
  } catch {
    return undefined;
  }
}

function readHash(path: string): string {
  const read = readText(path);
  return 'text' in read ? sumOf(read.text) : '';
}

function stampOf(path: string): Stamp | undefined {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat?.isFile()) return undefined;
  // As a float of milliseconds the time is good for a quarter of a microsecond: no file is written twice in that.
  return { text: `${stat.size} ${stat.mtimeMs} ${stat.ino}`, time: stat.mtimeMs };
}
