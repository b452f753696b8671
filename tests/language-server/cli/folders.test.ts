/**
 * Whole folders: the same bytes come out with and without kept results, on any number of threads, after a damaged cache
 * and after two runs at once; and only what changed is looked at where that is asked for.
 */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DOWEL, dowel, folderWith, RIGHT, ROOT, WRONG } from './dowel.ts';

const COUNT = 90;

/** A machine in a file of its own and many jobs that use it, some of them wrong; a rule that never applies. */
function many(): string {
  const at = WRONG.indexOf('\nprocedure ');
  const machine = `${WRONG.slice(0, at)}\nrule idle "Idle." { before remove winch require sign }\n`;
  const files: Record<string, string> = { 'machine.dowel': machine };
  for (let job = 0; job < COUNT; job++) {
    const text = (job % 7 === 0 ? WRONG : RIGHT).slice(
      (job % 7 === 0 ? WRONG : RIGHT).indexOf('\nprocedure '),
    );
    files[`jobs/job-${job}.dowel`] =
      `use "../machine.dowel"\n${text.replace(/procedure \S+/, `procedure job-${job}`)}`;
  }
  return folderWith(files);
}

/** Kept results are trusted by their time only when that is a while ago. */
function aged(folder: string): void {
  const before = new Date(Date.now() - 60_000);
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }))
    if (name.endsWith('.dowel')) utimesSync(join(folder, name), before, before);
}

test('the same bytes, however it is checked', () => {
  const folder = many();
  aged(folder);
  const run = (...args: string[]) => dowel(['check', '.', '--format', 'json', ...args], { cwd: folder });
  const plain = run('--workers', '1');
  expect(plain.code).toBe(1);
  expect(plain.out).toContain('rule-never-applies');
  expect(plain.out.match(/"check": "still-held"/g)!.length).toBe(Math.ceil(COUNT / 7));
  for (const args of [
    ['--workers', '2'],
    ['--workers', '5'],
    [],
    ['--cache'],
    ['--cache'],
    ['--cache', '--workers', '3'],
  ])
    expect(run(...args), args.join(' ')).toEqual(plain);
  // The cache lies in a hidden folder, which no walk meets.
  expect(readdirSync(join(folder, '.dowel-cache'))).toEqual(['results']);
});

test('what cannot be read is told in the order of the files, whichever thread met it', () => {
  const folder = many();
  const broken = ['job-150.dowel', 'job-31.dowel', 'job-8.dowel'];
  for (const file of broken) writeFileSync(join(folder, file), Uint8Array.of(0x61, 0xff, 0xfe));
  const run = (...args: string[]) => dowel(['check', '.', ...args], { cwd: folder });
  const plain = run('--workers', '1');
  expect(plain.code).toBe(2);
  expect(plain.err.match(/(?<=cannot check )[^:]+/g)).toEqual(broken);
  for (let round = 0; round < 3; round++) expect(run('--workers', '2')).toEqual(plain);
});

test('a change in a file, in what it uses, or in the configuration is seen', () => {
  const folder = many();
  aged(folder);
  const both = () => {
    const kept = dowel(['check', '.', '--cache', 'kept'], { cwd: folder });
    expect(kept).toEqual(dowel(['check', '.'], { cwd: folder }));
    return kept.out;
  };
  const first = both();
  const job = join(folder, 'jobs/job-1.dowel');
  const text = readFileSync(job, 'utf8');
  // Of the same length and with the old time: only the content tells.
  writeFileSync(job, text.replace('remove cover-bolts', 'refit  cover-bolts'));
  const second = both();
  expect(second).not.toBe(first);
  writeFileSync(job, text);
  expect(both()).toBe(first);
  const machine = join(folder, 'machine.dowel');
  writeFileSync(machine, readFileSync(machine, 'utf8').replace('"cover"', '"lid"'));
  expect(both()).not.toBe(first);
  writeFileSync(join(folder, 'dowel.config.json'), '{ "severities": { "still-held": "hint" } }');
  expect(both()).toContain('hint still-held');
  rmSync(machine);
  expect(both()).toContain('file-missing');
});

test('a damaged entry is worked out again and written anew; another form is not read', () => {
  const folder = many();
  aged(folder);
  const run = () => dowel(['check', '.', '--cache', 'kept'], { cwd: folder });
  const first = run();
  const file = join(folder, 'kept/results');
  const whole = readFileSync(file, 'utf8');
  const lines = whole.split('\n');
  lines[5] = lines[5]!.replace('"findings":[', '"findings":[ ');
  lines[9] = lines[9]!.slice(0, 40);
  for (const damaged of [lines.join('\n'), '', 'nonsense\n', `x${whole}`]) {
    writeFileSync(file, damaged);
    expect(run()).toEqual(first);
    expect(readFileSync(file, 'utf8').split('\n').length).toBe(whole.split('\n').length);
  }
});

test('two runs at once do no harm', async () => {
  const folder = many();
  const run = () =>
    new Promise<string>((resolve) => {
      const child = spawn(process.execPath, [DOWEL, 'check', '.', '--cache', 'kept'], { cwd: folder });
      let out = '';
      child.stdout.setEncoding('utf8').on('data', (piece: string) => {
        out += piece;
      });
      child.on('close', () => resolve(out));
    });
  const expected = dowel(['check', '.'], { cwd: folder }).out;
  expect(await Promise.all([run(), run(), run()])).toEqual([expected, expected, expected]);
  expect(readdirSync(join(folder, 'kept'))).toEqual(['results']);
});

test('where results cannot be kept, that is said and the report is whole', () => {
  const folder = folderWith({ 'a.dowel': RIGHT, kept: 'a file' });
  const run = dowel(['check', 'a.dowel', '--cache', 'kept'], { cwd: folder });
  expect(run.out).toMatch(/^No findings; 1 file checked\.\n/);
  expect(run.err).toMatch(/^dowel: cannot keep results in kept: .*\.\n$/);
  expect(run.code).toBe(0);
});

test.runIf(process.getuid?.() === 0)('a folder that may only be read: one message', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  chmodSync(folder, 0o555);
  const run = dowel(['check', 'a.dowel', '--output', 'json=r.json'], { cwd: folder, uid: 65_534 });
  chmodSync(folder, 0o755);
  expect(run.code).toBe(2);
  expect(run.err).toBe(
    'dowel: cannot write r.json: you may not write there. Change the permissions, or name another place.\n',
  );
});

test.runIf(existsSync('/dev/full'))('a full disk: one message, and what was there stays', () => {
  // A file system of its own cannot be made here; the device that is always full stands for one.
  const folder = folderWith({ 'a.dowel': RIGHT });
  const run = dowel(['check', 'a.dowel', '--output', 'json=/dev/full'], { cwd: folder });
  expect(run.code).toBe(2);
  expect(run.err).toBe(
    'dowel: cannot write /dev/full: the disk is full. Make room, then run the command again.\n',
  );
  expect(statSync('/dev/full').isCharacterDevice()).toBe(true);
});

test('a report can go to standard output by name, and the name stays what it is', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  // Through a pipe, as a shell makes it.
  const command = `"${process.execPath}" "${DOWEL}" check a.dowel --output json=/dev/stdout | cat`;
  const run = spawnSync('sh', ['-c', command], { cwd: folder, encoding: 'utf8' });
  expect(run.stdout).toContain('"filesChecked": 1');
  expect(lstatSync('/dev/stdout').isSymbolicLink()).toBe(true);
});

test('--changed-since looks at what changed and at what uses it', () => {
  const folder = many();
  const git = (...args: string[]) =>
    execFileSync('git', ['-c', 'user.name=T', '-c', 'user.email=t@example.org', ...args], { cwd: folder });
  git('init', '-q');
  git('add', '.');
  git('commit', '-q', '-m', 'First');
  const run = () => dowel(['check', '.', '--changed-since', 'HEAD'], { cwd: folder });
  expect(run()).toEqual({ code: 0, out: '', err: '' });
  writeFileSync(
    join(folder, 'jobs/job-3.dowel'),
    `${readFileSync(join(folder, 'jobs/job-3.dowel'), 'utf8')}// new\n`,
  );
  mkdirSync(join(folder, 'more'));
  writeFileSync(join(folder, 'more/new.dowel'), RIGHT);
  expect(run().out).toMatch(/ 2 files checked\.\n/);
  writeFileSync(
    join(folder, 'machine.dowel'),
    `${readFileSync(join(folder, 'machine.dowel'), 'utf8')}// new\n`,
  );
  expect(run().out).toMatch(new RegExp(` ${COUNT + 2} files checked\\.\\n`));
  const wrong = dowel(['check', '.', '--changed-since', 'no-such'], { cwd: folder });
  expect(wrong.code).toBe(2);
  expect(wrong.err).toContain('git knows no revision no-such here');
});

test('--watch checks again when a file changes, and ends when told', async () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  const child = spawn(process.execPath, [DOWEL, 'check', '.', '--watch'], { cwd: folder });
  let out = '';
  const until = (pattern: RegExp) =>
    new Promise<void>((resolve) => {
      const look = () => {
        if (pattern.test(out)) resolve();
      };
      child.stdout.on('data', look);
      look();
    });
  child.stdout.setEncoding('utf8').on('data', (piece: string) => {
    out += piece;
  });
  await until(/No findings; 1 file checked\.\n[\s\S]*Waiting/);
  writeFileSync(join(folder, 'a.dowel'), WRONG);
  await until(/still-held[\s\S]*Waiting/);
  child.kill('SIGINT');
  expect(await new Promise((resolve) => child.on('close', resolve))).toBe(1);
});

test('a hidden command for threads is no part of the help', () => {
  expect(dowel(['--help'], { cwd: ROOT }).out).not.toContain('worker');
});
