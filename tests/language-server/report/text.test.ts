/** What a person sees in the terminal. The look is the project's own, so these are snapshots. */
import { expect, test } from 'vitest';
import type { Finding } from '../../../language-server/report/finding.ts';
import { lineStore } from '../../../language-server/report/frame.ts';
import { findingText } from '../../../language-server/report/text.ts';

/** A finding at the first `‹…›` of the text; the marks are taken out. */
function at(marked: string, more: Partial<Finding> = {}): { finding: Finding; text: string } {
  const start = marked.indexOf('‹');
  const end = marked.indexOf('›') - 1;
  const text = marked.replace(/[‹›]/g, '');
  const finding: Finding = {
    check: 'still-held',
    severity: 'error',
    message: 'The cover is removed while cover-bolts still hold it.',
    file: 'pump.dowel',
    start,
    end,
    related: [],
    ...more,
  };
  return { finding, text };
}

function shown({ finding, text }: { finding: Finding; text: string }): string {
  const lines = lineStore((file) => (file === 'pump.dowel' ? text : undefined));
  return `\n${findingText(finding, { lines })}\n`;
}

/** The row of carets must stand under the place, counted in columns of plain text. */
test('a finding with its story', () => {
  const source = 'task strip {\n  loosen cover-bolts\n  remove ‹cover›\n}\n';
  const { finding, text } = at(source, {
    help: 'Remove cover-bolts before it.',
    case: 'supply is single-phase',
  });
  const start = text.indexOf('cover-bolts');
  finding.related = [
    { file: 'pump.dowel', start, end: start + 11, message: 'cover-bolts are only loosened here' },
    { file: 'machine.dowel', start: 4, end: 9, message: 'cover is held by cover-bolts' },
    { file: 'pump.dowel', start: finding.start, end: finding.end, message: 'cover is touched again here' },
  ];
  expect(shown({ finding, text })).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:3:10
        3      remove cover
                      ^^^^^
      see  pump.dowel:2:10  cover-bolts are only loosened here
        2      loosen cover-bolts
                      ^^^^^^^^^^^
      see  machine.dowel  cover is held by cover-bolts
      see  cover is touched again here
       do  Remove cover-bolts before it.
     case  supply is single-phase
    "
  `);
});

test('tabs, wide characters and emoji before the place', () => {
  expect(shown(at('\t\tremove ‹cover›'))).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:1:10
        1            remove cover
                            ^^^^^
    "
  `);
  expect(shown(at('note "水 🔧 e\u0301" remove ‹水蓋›'))).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:1:23
        1    note "水 🔧 é" remove 水蓋
                                   ^^^^
    "
  `);
});

test('an empty place, and one after the last line', () => {
  expect(shown(at('fit new‹›\nfit cover'))).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:1:8
        1    fit new
                    ^
    "
  `);
  expect(shown(at('fit cover\n‹›'))).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:2:1
    "
  `);
  expect(shown(at('‹›'))).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:1:1
    "
  `);
});

test('a place over several lines', () => {
  expect(shown(at('  ‹task strip {\n  remove cover\n}\n›'))).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:1:3
        1      task strip {
               ^^^^^^^^^^^^ to line 3
    "
  `);
});

test('a line longer than the room', () => {
  const long = `note "${'one two three '.repeat(20)}" ‹remove cover› ${'and so on '.repeat(20)}`;
  expect(shown(at(long))).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:1:289
        1    …o three one two three " remove cover and so on and so on and so on and so on and so on and so on…
                                      ^^^^^^^^^^^^
    "
  `);
});

test('a line without an end is shown around the place only', () => {
  const endless = `${'x '.repeat(2_000_000)}‹remove cover›${' y'.repeat(2_000_000)}`;
  const text = shown(at(endless));
  expect(text).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  pump.dowel:1:4000001
        1    …x x x x x x x x x x x x remove cover y y y y y y y y y y y y y y y y y y y y y y y y y y y y y y…
                                      ^^^^^^^^^^^^
    "
  `);
});

test('a file that cannot be had is named', () => {
  expect(shown(at('remove ‹cover›', { file: 'gone.dowel' }))).toMatchInlineSnapshot(`
    "
    error still-held
           The cover is removed while cover-bolts still hold it.

       at  gone.dowel
    "
  `);
});

test('nothing in a source steers the terminal', () => {
  const text = shown(at('\u001b[2Jremove ‹cover›', { message: 'cover \u001b[31m is held' }));
  expect(text).not.toContain('\u001b');
});

test('a painter dresses the pieces and changes nothing else', () => {
  const { finding, text } = at('remove ‹cover›', { help: 'Remove cover-bolts.' });
  const lines = lineStore(() => text);
  const painted = findingText(finding, { lines, paint: (dress, piece) => `<${dress}>${piece}</>` });
  expect(painted.replace(/<[^>]*>/g, '').replace(/ +$/gm, '')).toBe(findingText(finding, { lines }));
  expect(painted).toMatchInlineSnapshot(`
    "<error>error</> <check>still-held</>
           <message>The cover is removed while cover-bolts still hold it.</>

    <margin>   at</>  <place>pump.dowel:1:8</>
    <margin>    1</>    remove cover
    <margin>     </>           <error>^^^^^</>
    <margin>   do</>  <advice>Remove cover-bolts.</>"
  `);
});
