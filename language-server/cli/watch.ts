/**
 * `dowel check --watch`: checks, waits for a file to change, checks again; until it is stopped. With a folder for results
 * only what a change touches is worked out again, so one in memory of this run is used where none is named.
 */
import { mkdtempSync, watch as onChange, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { CONFIG_NAME } from '../config/house.ts';
import { type CheckOptions, check } from './check.ts';
import { complain, type ExitCode, print } from './output.ts';
import { EXTENSION } from './walk.ts';

/** Editors write a file in several goes: the check waits until they have been quiet for so long. */
const QUIET_MS = 60;

export async function watchPaths(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  if (options.mend === 'write') {
    complain('--watch and --mend=write do not go together: what is mended would start the next check.');
    return 2;
  }
  const own = options.cache === undefined ? mkdtempSync(join(tmpdir(), 'dowel-watch-')) : undefined;
  const how = { ...options, cache: options.cache ?? own };
  const again = async () => {
    const code = await check(paths, how);
    print('Waiting for a change; Ctrl+C ends.\n');
    return code;
  };
  try {
    let code: ExitCode = 0;
    const ended = new Promise<void>((resolve) => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
    });
    let timer: NodeJS.Timeout | undefined;
    let running = Promise.resolve();
    const checkAgain = () => {
      running = running.then(async () => {
        code = await again();
      });
    };
    // Watched before the first check: a change while it runs is not lost.
    const watchers = folders(paths).map((folder) =>
      onChange(folder, { recursive: true }, (_, name) => {
        if (name !== null && !name.endsWith(EXTENSION) && !name.endsWith(CONFIG_NAME)) return;
        clearTimeout(timer);
        timer = setTimeout(checkAgain, QUIET_MS);
      }),
    );
    checkAgain();
    await ended;
    clearTimeout(timer);
    for (const watcher of watchers) watcher.close();
    await running;
    return code;
  } finally {
    if (own !== undefined) rmSync(own, { recursive: true, force: true });
  }
}

/** Folders in which something can change that is checked. A file is watched by its folder, which outlives it. */
function folders(paths: readonly string[]): string[] {
  const found = paths.flatMap((path) => {
    const stat = statSync(path, { throwIfNoEntry: false });
    return stat === undefined ? [] : [stat.isDirectory() ? path : dirname(path)];
  });
  return [...new Set(found)];
}
