/**
 * Results of earlier runs, so that a file is checked again only when it, or something it uses, is another one. One text
 * file in a folder of its own, an entry a line, each with its own sum: an entry that is damaged counts as not there. It
 * is replaced in one go, so several runs at once do no harm; what the last one writes holds. Nothing here is ever
 * needed: without it everything is checked, with the same result.
 *
 * A file is known by its content. Its size, time and number on the disk save the reading where they are as before and
 * the time is older than the cache itself; a file written in the same moment as the cache is read again.
 */
import { mkdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readText } from './read.ts';
import { type Failure, refusedWriting, writeText } from './replace.ts';
import { sumOf } from './sum.ts';

/** Two seconds: what the coarsest file systems in use round times to. */
const COARSE = 2_000_000_000n;

/** Goes up when the form of the entries changes. */
const FORM = 2;
/** Where these are the same, so is the rest. */
const EQUAL = ['stamp', 'hash', 'house'] as const;

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
  writtenAt: bigint;
}

export class ResultCache {
  private readonly store: Store;
  private readonly fresh = new Map<string, Entry>();
  private readonly hashes = new Map<string, string>();
  private readonly stamps = new Map<string, string | undefined>();
  private readonly houses = new Map<string, string>();
  private readonly file: string;
  private readonly key: string;

  /** Results of another version of the program are not taken. */
  constructor(folder: string, version: string) {
    this.file = join(folder, 'results');
    this.key = sumOf(`${FORM} ${version}`);
    this.store = storeIn(this.file, this.key);
  }

  /**
   * The result of an earlier run for exactly this file, what it uses and what the house has agreed on for it; undefined
   * where there is none.
   */
  result(path: string, house: string): unknown {
    const entry = this.store.entries.get(path);
    if (!entry || entry.house !== this.houseSum(house) || this.hashOf(path) !== entry.hash) return undefined;
    if (entry.uses.some(([used, hash]) => this.hashOf(used) !== hash)) return undefined;
    const stamp = this.stampOf(path) ?? '';
    this.fresh.set(path, stamp === entry.stamp ? entry : { ...entry, stamp });
    return entry.result;
  }

  /** Remembers a result together with everything that was read for it. */
  keep(path: string, house: string, uses: readonly string[], result: unknown): void {
    const stamp = this.stampOf(path);
    if (stamp === undefined) return;
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
    // Another run may have written since.
    const asRead = this.store.stamp !== undefined && stampOf(this.file) === this.store.stamp;
    const { entries, lines: written } = asRead ? this.store : storeIn(this.file, this.key);
    const all = [...new Map([...entries, ...this.fresh]).values()];
    const known = (one: Entry) => {
      const before = entries.get(one.path);
      return before !== undefined && EQUAL.every((field) => before[field] === one[field]);
    };
    if (entries.size === all.length && all.every(known)) return undefined;
    const lines = all.map((entry) => {
      const known = written.get(entry);
      if (known !== undefined) return known;
      const text = JSON.stringify(entry);
      return `${sumOf(text)} ${text}`;
    });
    return writeText(this.file, `${this.key}\n${lines.join('\n')}\n`);
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
    if (!entry || stamp === undefined || stamp !== entry.stamp) return undefined;
    const time = BigInt(stamp.split(' ')[1]!);
    return time + COARSE < this.store.writtenAt ? entry.hash : undefined;
  }

  /** Asked once: the stamp of a file is older than what is read of it, never younger. */
  private stampOf(path: string): string | undefined {
    if (!this.stamps.has(path)) this.stamps.set(path, stampOf(path));
    return this.stamps.get(path);
  }

  /** Most files have the same house. */
  private houseSum(house: string): string {
    const known = this.houses.get(house) ?? sumOf(house);
    this.houses.set(house, known);
    return known;
  }
}

function storeIn(file: string, key: string): Store {
  const store: Store = { entries: new Map(), lines: new Map(), stamp: undefined, writtenAt: 0n };
  let text = '';
  try {
    store.stamp = stampOf(file);
    text = readFileSync(file, 'utf8');
    store.writtenAt = statSync(file, { bigint: true }).mtimeNs;
  } catch {
    return store;
  }
  const lines = text.split('\n');
  if (lines[0] !== key) return store;
  for (const line of lines.slice(1)) {
    const entry = entryOf(line);
    if (!entry) continue;
    store.entries.set(entry.path, entry);
    store.lines.set(entry, line);
  }
  return store;
}

function entryOf(line: string): Entry | undefined {
  const blank = line.indexOf(' ');
  const text = line.slice(blank + 1);
  if (blank < 0 || line.slice(0, blank) !== sumOf(text)) return undefined;
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

/** Size, time of last change (nanoseconds) and number on the disk. */
function stampOf(path: string): string | undefined {
  const stat = statSync(path, { bigint: true, throwIfNoEntry: false });
  return stat?.isFile() ? `${stat.size} ${stat.mtimeNs} ${stat.ino}` : undefined;
}
