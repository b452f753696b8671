/**
 * What nobody means to give the checker and somebody will: each ends with a clear message or finding and the
 * right exit code, without a crash and without a wait. Exit codes as the command line promises them.
 */
import { chmodSync, mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { dowel, type Ended, folderWith, RIGHT, WRONG } from './dowel.ts';

const EXIT = { silent: 0, findings: 1, impossible: 2 };

/** No stack, no words of the tool about itself, and something said in one place at least. */
function wentWell({ out, err }: Ended): void {
  expect(`${out}${err}`).not.toMatch(/Dowel itself|tool-failure|RangeError|TypeError|\n {4}at /);
  expect(`${out}${err}`).not.toBe('');
}

function check(files: Parameters<typeof folderWith>[0], ...args: string[]): Ended {
  const ended = dowel(['check', ...args], { cwd: folderWith(files) });
  wentWell(ended);
  return ended;
}

test('an empty file is checked like any other', () => {
  const { code, out } = check({ 'a.dowel': '' }, 'a.dowel');
  expect(code).toBe(EXIT.silent);
  expect(out).toContain('1 file checked');
});

test('marks that no keyboard has are read by the built program, too', () => {
  const text = `machine rig "rig" {
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts
  fastener bolts "bolts" ×2  torque 25 ± 3 N·m
  fluid oil "oil"
  system bath "bath" holds 1 L oil  temperature −10 °C
}
`;
  const { code, out } = check({ 'a.dowel': text }, 'a.dowel');
  expect(out).toContain('No findings');
  expect(code).toBe(EXIT.silent);
});

test('a binary file', () => {
  const bytes = Uint8Array.from({ length: 4096 }, (_, index) => (index * 197) % 256);
  const { code, err } = check({ 'a.dowel': bytes }, 'a.dowel');
  expect(code).toBe(EXIT.impossible);
  expect(err).toBe(
    'dowel: cannot check a.dowel: it is not UTF-8 text. Save it again with the encoding UTF-8.\n',
  );
});

test('zero bytes in what is otherwise text', () => {
  const { code, err } = check({ 'a.dowel': 'machine a\0' }, 'a.dowel');
  expect(code).toBe(EXIT.impossible);
  expect(err).toContain('a.dowel: it holds zero bytes');
});

test('UTF-16, as some editors save it', () => {
  const text = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(RIGHT, 'utf16le')]);
  const { code, err } = check({ 'a.dowel': text }, 'a.dowel');
  expect(code).toBe(EXIT.impossible);
  expect(err).toContain('a.dowel: it is UTF-16 text, not UTF-8.');
});

test('50 MB are not read', () => {
  const { code, out } = check({ 'a.dowel': Buffer.alloc(50 * 1024 * 1024, 'remove cover\n') }, 'a.dowel');
  expect(code).toBe(EXIT.findings);
  expect(out).toContain('error file-too-large');
  expect(out).toContain('The file has 50 MB; files above 16 MB are not read.');
});

test('a brace that is never closed', () => {
  const { code, out } = check({ 'a.dowel': RIGHT.replace(/}\n$/, '') }, 'a.dowel');
  expect(code).toBe(EXIT.findings);
  expect(out).toMatch(/a\.dowel:\d+:\d+/);
});

test('10,000 nested blocks', () => {
  const nested = `procedure deep "Deep"\n{\n${'task t {\n'.repeat(10_000)}${'}\n'.repeat(10_000)}}\n`;
  const { code } = check({ 'a.dowel': nested }, 'a.dowel');
  expect([EXIT.silent, EXIT.findings]).toContain(code);
});

test('10,000 blocks that are opened and never closed', () => {
  const { code } = check({ 'a.dowel': `procedure deep\n${'{ task t '.repeat(10_000)}` }, 'a.dowel');
  expect(code).toBe(EXIT.findings);
});

test('one line of a million braces', () => {
  const { code } = check({ 'a.dowel': '{'.repeat(1_000_000) }, 'a.dowel');
  expect(code).toBe(EXIT.findings);
});

test('line ends and a byte order mark of another system change nothing but the offsets', () => {
  const plain = check({ 'a.dowel': WRONG }, 'a.dowel');
  const other = check({ 'a.dowel': `\ufeff${WRONG.replaceAll('\n', '\r\n')}` }, 'a.dowel');
  expect(plain.code).toBe(EXIT.findings);
  expect(other).toEqual(plain);
});

test('emoji and other scripts in texts and comments', () => {
  const text = RIGHT.replace('"wear"', '"wear 🔧 水 ⚠️"').replace(
    '  remove cover\n',
    '  remove cover // 👩‍🔧\n',
  );
  const { code, out } = check({ 'a.dowel': text }, 'a.dowel');
  expect(code).toBe(EXIT.silent);
  expect(out).toContain('1 file checked');
});

test('emoji where names belong', () => {
  const { code, out } = check({ 'a.dowel': RIGHT.replaceAll('cover-bolts', '🔧-bolts') }, 'a.dowel');
  expect(code).toBe(EXIT.findings);
  expect(out).toMatch(/a\.dowel:\d+:\d+/);
});

test('a file that uses itself, and two that use each other', () => {
  const alone = check({ 'a.dowel': `use "a.dowel"\n\n${RIGHT}` }, 'a.dowel');
  expect([EXIT.silent, EXIT.findings]).toContain(alone.code);
  const both = check({ 'a.dowel': `use "b.dowel"\n${RIGHT}`, 'b.dowel': 'use "a.dowel"\n' }, '.');
  expect([EXIT.silent, EXIT.findings]).toContain(both.code);
});

test('a used file that is not there is a finding where it is used', () => {
  const { code, out } = check({ 'a.dowel': `use "gone.dowel"\n\n${RIGHT}` }, 'a.dowel');
  expect(code).toBe(EXIT.findings);
  expect(out).toContain('a.dowel:1:');
});

test('no such file', () => {
  const { code, out, err } = check({}, 'gone.dowel');
  expect(code).toBe(EXIT.impossible);
  expect(out).toBe('');
  expect(err).toBe(
    'dowel: cannot check gone.dowel: no such file or folder. Check how the path is written.\n',
  );
});

test('one path that cannot be checked does not hide what is wrong in another', () => {
  const { code, out, err } = check({ 'a.dowel': WRONG }, 'a.dowel', 'gone.dowel');
  expect(code).toBe(EXIT.impossible);
  expect(out).toContain('a.dowel:');
  expect(err).toContain('gone.dowel');
});

test('a folder with nothing to check', () => {
  const { code, err } = check({ 'notes/readme.txt': 'x' }, 'notes');
  expect(code).toBe(EXIT.impossible);
  expect(err).toContain('cannot check notes: no file in this folder ends in .dowel.');
});

test('a file that may not be read', () => {
  const folder = folderWith({ 'a.dowel': RIGHT });
  chmodSync(join(folder, 'a.dowel'), 0o000);
  chmodSync(folder, 0o755);
  // Whoever administers the machine may read everything: then somebody else asks.
  const uid = process.getuid?.() === 0 ? 65534 : undefined;
  const ended = dowel(['check', 'a.dowel'], { cwd: folder, ...(uid === undefined ? {} : { uid }) });
  wentWell(ended);
  expect(ended.code).toBe(EXIT.impossible);
  expect(ended.err).toContain('cannot check a.dowel: you may not read it.');
});

test('a folder named like a file, and a link that leads round', () => {
  const folder = folderWith({ 'a.dowel/': '', 'b.dowel': RIGHT });
  symlinkSync('round.dowel', join(folder, 'round.dowel'));
  const link = dowel(['check', 'round.dowel'], { cwd: folder });
  expect(link.code).toBe(EXIT.impossible);
  expect(link.err).toContain('its symbolic links go round in a circle');
  const all = dowel(['check', '.'], { cwd: folder });
  expect(all.out).toContain('1 file checked');
});

test('a device is not read', () => {
  const { code, err } = check({}, '/dev/zero');
  expect(code).toBe(EXIT.impossible);
  expect(err).toContain('it is not a plain file');
});

test('a use that leads to a device does not hang', () => {
  const { code } = check({ 'a.dowel': `use "/dev/zero"\n\n${RIGHT}` }, 'a.dowel');
  expect(code).toBe(EXIT.findings);
});

test('a deep folder tree', () => {
  const folder = folderWith({});
  const deep = join(folder, 'd/'.repeat(300));
  mkdirSync(deep, { recursive: true });
  const { code } = dowel(['check', '.'], { cwd: folder });
  expect(code).toBe(EXIT.impossible);
});

test('words in the wrong place on the command line', () => {
  for (const args of [
    [],
    ['chekc'],
    ['check'],
    ['check', '--format', 'xml', '.'],
    ['explain', 'no-such-check'],
  ]) {
    const ended = dowel(args);
    expect(ended.code, args.join(' ')).toBe(EXIT.impossible);
    expect(ended.err, args.join(' ')).not.toBe('');
  }
});
